#include "engine/screen/undisturbed.hpp"

#include <algorithm>
#include <complex>
#include <numbers>
#include <optional>
#include <variant>

namespace stillground::screen {

namespace {

using Values = std::vector<double>;

constexpr double yearly_frequency = 2 * std::numbers::pi / seconds_per_year;  // w [1/s]
constexpr double early = seconds_per_day;  // before, shares tell of the bores' filling

/// The first sample at `time` or later.
std::size_t sample_at(const response::FieldResponse& response, double time) {
  const auto before = [](const response::Sample& sample, double t) { return sample.time < t; };
  const auto& samples = response.samples;
  const auto found = std::lower_bound(samples.begin(), samples.end() - 1, time, before);
  return static_cast<std::size_t>(found - samples.begin());
}

/// Sum over the layers of shares times what each layer has.
template <class Value>
Value weighted(const std::vector<Value>& shares, const Values& per_layer) {
  Value sum = 0;
  for (std::size_t k = 0; k < shares.size(); ++k) sum += shares[k] * per_layer[k];
  return sum;
}

/// The part that a layer's yearly wave exp(i w t) has in the field's temperature. The shares s(t) are step responses,
/// so theirs to the wave is s(t_0) + sum_j exp(-i w t_j) [s(t_j+) - s(t_j-)], t_j between two samples.
std::vector<std::complex<double>> shares_of_a_wave(const response::FieldResponse& response) {
  const std::size_t first = sample_at(response, early);
  const Values& start = response.shares[first];
  std::vector<std::complex<double>> sum(start.begin(), start.end());
  for (std::size_t s = first + 1; s < response.samples.size(); ++s) {
    const double middle = (response.samples[s - 1].time + response.samples[s].time) / 2;
    const auto turned = std::polar(1.0, -yearly_frequency * middle);
    for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += turned * (response.shares[s][i] - response.shares[s - 1][i]);
  }
  return sum;
}

/// How much warmer each layer is than `than` [K].
Values above(const ground::Undisturbed& undisturbed, double time, const Values& than) {
  Values now(than.size());
  undisturbed.at(time, now);
  for (std::size_t k = 0; k < now.size(); ++k) now[k] -= than[k];
  return now;
}

/// A run's undisturbed ground but for what its surface warms by.
class WithoutTrend {
 public:
  explicit WithoutTrend(const assembly::Assembly& assembly) : run_(assembly.problem.undisturbed) {
    model::Ground ground = assembly.scenario.ground;
    auto* surface = std::get_if<model::SeasonalSurface>(&ground.undisturbed);
    if (!surface || surface->trend == 0) return;
    surface->trend = 0;
    own_.emplace(ground, assembly.problem.grid, hour_of_year(assembly.scenario.run.start) * seconds_per_hour,
                 assembly.duration());
  }

  bool has_trend() const { return own_.has_value(); }
  const ground::Undisturbed& undisturbed() const { return own_ ? *own_ : run_; }

  /// What the trend has added to each layer by then [K].
  Values warming(double time) const {
    Values without(run_.yearly_mean().size());
    undisturbed().at(time, without);
    return above(run_, time, without);
  }

 private:
  const ground::Undisturbed& run_;
  std::optional<ground::Undisturbed> own_;
};

}  // namespace

FieldsUndisturbed::FieldsUndisturbed(const assembly::Assembly& assembly, const response::FieldResponse& response) {
  const Values& yearly = assembly.problem.undisturbed.yearly_mean();
  Values standing;  // [sample]
  for (const Values& shares : response.shares) standing.push_back(weighted(shares, yearly));
  // Of the wave a year long: now and a quarter of it later are the two parts of its amplitude.
  const WithoutTrend still(assembly);
  const auto wave_shares = shares_of_a_wave(response);
  const auto quarter = weighted(wave_shares, above(still.undisturbed(), seconds_per_year / 4, yearly));
  const std::complex<double> wave =
      weighted(wave_shares, above(still.undisturbed(), 0, yearly)) - std::complex<double>(0, 1) * quarter;
  const Values& recent = response.shares[sample_at(response, 1 / yearly_frequency)];
  for (long day = 0; day <= assembly.hours() / 24; ++day) {
    const double time = static_cast<double>(day) * seconds_per_day;
    midnight_.push_back(standing[sample_at(response, std::max(time, early))] +
                        (wave * std::polar(1.0, yearly_frequency * time)).real());
    if (still.has_trend()) midnight_.back() += weighted(recent, still.warming(time));
  }
  midnight_.push_back(midnight_.back());  // to be read with no part of it
}

}  // namespace stillground::screen
