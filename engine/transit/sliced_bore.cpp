#include "engine/transit/sliced_bore.hpp"

#include <algorithm>
#include <array>
#include <numeric>
#include <utility>

#include "engine/march/instruction_sets.hpp"

namespace stillground::transit {

std::vector<Stretch> stretches_of(const ground::Grid& grid, const std::vector<std::size_t>& network_of_layer,
                                  const SliceChoice& choice) {
  std::vector<Stretch> stretches;
  std::size_t layer = 0;
  for (std::size_t i = 0; i < choice.slices; ++i) {
    const double z = choice.top + (static_cast<double>(i) + 0.5) * choice.depth / static_cast<double>(choice.slices);
    while (layer + 1 < grid.nz() && grid.z_faces[layer + 1] < z) ++layer;
    if (stretches.empty() || stretches.back().network != network_of_layer[layer]) {
      stretches.push_back({i, i, network_of_layer[layer], grid.solid[layer]});
    }
    stretches.back().end = i + 1;
  }
  return stretches;
}

SlicedBore::SlicedBore(const SliceChoice& choice, std::vector<Stretch> stretches, std::vector<double> capacity)
    : slices_(choice.slices),
      height_(choice.depth / static_cast<double>(choice.slices)),
      capacity_(std::move(capacity)),
      ground_(choice.radius, std::move(stretches)),
      values_(3 * capacity_.size() * slices_),
      scratch_(values_.size()),
      wall_heat_(slices_),
      wall_(slices_),
      filled_(capacity_.size()),
      heat_(capacity_.size()) {}

void SlicedBore::set_ambient(std::span<const double> ambient) {
  if (ambient_.empty()) {
    // Mode 0 stands at the ground's temperature, the others' nodes at none.
    for (std::size_t s = 0; s < streams(); ++s) std::copy(ambient.begin(), ambient.end(), row(s));
    for (const std::size_t node : {streams(), streams() + 1}) std::copy(ambient.begin(), ambient.end(), row(node));
  }
  ambient_.assign(ambient.begin(), ambient.end());
}

void SlicedBore::shift(double warmer) {
  for (std::size_t unknown = 0; unknown < streams() + 2; ++unknown) {
    std::for_each(row(unknown), row(unknown) + slices_, [&](double& value) { value += warmer; });
  }
  for (double& value : ambient_) value += warmer;
  for (std::size_t s = 0; s < streams(); ++s) heat_[s] += filled_[s] * warmer;
}

namespace {

/// Eight slices side by side, wherever they begin.
using Block = double __attribute__((vector_size(8 * sizeof(double)), aligned(alignof(double)), may_alias));
constexpr std::size_t block = sizeof(Block) / sizeof(double);

/// (unknowns after a step, heat to the ground) = matrix (unknowns before it, E), for the slices from `k` on that one
/// `Value` holds.
template <class Value>
[[gnu::always_inline]] inline void apply(const Exchange& by, const double* before, const double* wall, double* after,
                                         double* heat, double step, std::size_t row, std::size_t k) {
  const std::size_t n = by.unknowns;
  for (std::size_t i = 0; i <= n; ++i) {
    const double* factors = by.matrix.data() + i * (n + 1);
    Value sum = factors[n] * *reinterpret_cast<const Value*>(wall + k);
    for (std::size_t j = 0; j < n; ++j) sum += factors[j] * *reinterpret_cast<const Value*>(before + j * row + k);
    if (i < n) {
      *reinterpret_cast<Value*>(after + i * row + k) = sum;
    } else {
      *reinterpret_cast<Value*>(heat + k) += step * sum;
    }
  }
}

/// The same for the slices [from, end).
STILLGROUND_CLONED
void apply(const Exchange& by, const double* before, const double* wall, double* after, double* heat, double step,
           std::size_t row, std::size_t from, std::size_t end) {
  std::size_t k = from;
  for (; k + block <= end; k += block) apply<Block>(by, before, wall, after, heat, step, row, k);
  for (; k < end; ++k) apply<double>(by, before, wall, after, heat, step, row, k);
}

}  // namespace

void SlicedBore::exchange(const Exchanges& exchanges, double step) {
  const auto theta = ground_.first();
  for (std::size_t k = 0; k < slices_; ++k) wall_[k] = ambient_[k] + theta[k];
  std::swap(values_, scratch_);
  for (std::size_t n = 0; n < exchanges.size(); ++n) {
    const Stretch& at = ground_.stretches()[n];
    apply(exchanges[n], scratch_.data(), wall_.data(), values_.data(), wall_heat_.data(), step, slices_, at.first,
          at.end);
  }
}

double SlicedBore::fluid() const {
  const auto end = values_.begin() + static_cast<std::ptrdiff_t>(streams() * slices_);
  return std::accumulate(values_.begin(), end, 0.0) / static_cast<double>(streams() * slices_);
}

void SlicedBore::warm_ground(double interval) {
  for (double& heat : wall_heat_) heat /= interval;
  ground_.advance(interval, wall_heat_);
  std::fill(wall_heat_.begin(), wall_heat_.end(), 0.0);
}

void SlicedBore::warm_ground(double interval, double heat) {
  const double length = height_ * static_cast<double>(slices_);
  std::fill(wall_heat_.begin(), wall_heat_.end(), heat / length * interval);
  warm_ground(interval);
}

double SlicedBore::at_end(std::size_t stream, std::size_t behind) const {
  const bool down = stream < streams() / 2;
  return values_[stream * slices_ + (down ? slices_ - 1 - behind : behind)];
}

double SlicedBore::leaving(std::size_t stream, double amount) const {
  const double whole = amount / (capacity_[stream] * height_);
  double left = whole, sum = 0, in_slice = 1 - filled_[stream];
  for (std::size_t behind = 0; left > 0; ++behind, in_slice = 1) {
    const double taken = std::min(left, in_slice);
    sum += taken * at_end(stream, std::min(behind, slices_ - 1));
    left -= taken;
  }
  return sum / whole;
}

void SlicedBore::move_on(std::size_t stream, double entering) {
  double* first = row(stream);
  if (stream < streams() / 2) {
    std::copy_backward(first, first + slices_ - 1, first + slices_);
    first[0] = entering;
  } else {
    std::copy(first + 1, first + slices_, first);
    first[slices_ - 1] = entering;
  }
}

void SlicedBore::send(std::size_t stream, double amount, double temperature) {
  constexpr double round_off = 1e-12;  // equal streams move on at the same step
  double left = amount / (capacity_[stream] * height_);
  while (left > 0) {
    const double taken = std::min(left, 1 - filled_[stream]);
    filled_[stream] += taken;
    heat_[stream] += taken * temperature;
    left -= taken;
    if (filled_[stream] < 1 - round_off) return;
    move_on(stream, heat_[stream] / filled_[stream]);
    filled_[stream] = heat_[stream] = 0;
  }
}

}  // namespace stillground::transit
