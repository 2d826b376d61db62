#include "engine/forecast/error_responses.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/field/distance_nodes.hpp"
#include "engine/field/layout.hpp"
#include "engine/field/superposition.hpp"
#include "engine/response/single_bore.hpp"

namespace stillground::forecast {

namespace {

constexpr long early_hours = 48;  // a load's jump is felt in the time step for a day: after two nothing is left of it
constexpr double between_knots = 1.1;
constexpr double answer_soon = 3;  // bores nearer than this may feel each other within the early hours [m]

using Values = std::vector<double>;

/// Hours at which the late marches are read, to the run's end.
std::vector<long> hours_from(long first, long last) {
  std::vector<long> hours;
  for (double hour = static_cast<double>(first); std::lround(hour) < last;
       hour = std::max(hour + 1, hour * between_knots)) {
    hours.push_back(std::lround(hour));
  }
  hours.push_back(last);
  return hours;
}

bool close_bores(const std::vector<model::BoreSite>& bores) {
  const auto nearest = field::nearest_distances(bores);
  return std::any_of(nearest.begin(), nearest.end(), [](double distance) { return distance < answer_soon; });
}

/// A plain lone bore's late answer, split into its own fluid's and the mean neighbours'.
struct LongTime {
  Values own, neighbours;

  Values sum() const {
    Values both = own;
    for (std::size_t i = 0; i < both.size(); ++i) both[i] += neighbours[i];
    return both;
  }
};

class LongTimeMarches {
 public:
  LongTimeMarches(const assembly::Assembly& assembly, const std::vector<long>& hours)
      : assembly_(assembly), hours_(hours), around_(neighbourhood(assembly.bores)) {}

  /// To the last of the hours that is not beyond `last`.
  LongTime march(const response::Refinement& by, long last) const {
    std::vector<double> times;
    for (const long hour : hours_) {
      if (hour <= last) times.push_back(static_cast<double>(hour) * seconds_per_hour);
    }
    const model::Scenario bore = response::plain_lone_bore(assembly_, by);
    const response::LongTimeRise rise =
        response::long_time_rise(assembly::assemble(bore, assembly_), times, around_.distance);
    LongTime late{rise.fluid, {}};
    for (const Values& at : rise.at_distance) {
      double sum = 0;
      for (std::size_t j = 0; j < at.size(); ++j) sum += around_.count[j] * at[j];
      late.neighbours.push_back(sum);
    }
    return late;
  }

 private:
  const assembly::Assembly& assembly_;
  const std::vector<long>& hours_;
  Neighbourhood around_;
};

Values difference(const Values& run, const Values& finer, double rest) {
  Values error;
  for (std::size_t i = 0; i < std::min(run.size(), finer.size()); ++i) error.push_back(rest * (run[i] - finer[i]));
  return error;
}

/// `values` stand at the first knots only: on from there in proportion to `shape`.
Values continued(Values values, const Values& shape) {
  const std::size_t known = values.size();
  const double scale = values.back() / shape[known - 1];
  for (std::size_t i = known; i < shape.size(); ++i) values.push_back(scale * shape[i]);
  return values;
}

/// The neighbours' answer with a knot at every refresh, so that what lies between the refreshes is the answer's own
/// bend and not that of straight lines between far knots: 400 of them, then 1 % of the time apart. Cubic in the
/// logarithm of time, as answers are taken in that of the distance.
response::StepResponse at_refreshes(long interval, const std::vector<long>& hours, const Values& neighbours) {
  const std::vector<double> nodes(hours.begin(), hours.end());
  std::vector<long> knots{0};
  Values values{0};
  while (knots.back() < hours.back()) {
    knots.push_back(knots.back() + interval * std::max(1L, knots.back() / (400 * interval)));
    double value = 0;
    if (knots.back() >= hours.front()) {
      for (const auto& w : field::logarithmic_weights(nodes, static_cast<double>(knots.back()))) {
        value += w.weight * neighbours[w.cell];
      }
    }
    values.push_back(value);
  }
  return {std::move(knots), std::move(values)};
}

/// Early values hour by hour, late ones at their knots.
response::StepResponse joined(Values early, const std::vector<long>& hours, const Values& late) {
  std::vector<long> knots;
  for (long n = 0; n < static_cast<long>(early.size()); ++n) knots.push_back(n);
  knots.insert(knots.end(), hours.begin(), hours.end());
  early.insert(early.end(), late.begin(), late.end());
  return {std::move(knots), std::move(early)};
}

}  // namespace

Neighbourhood neighbourhood(const std::vector<model::BoreSite>& bores) {
  if (bores.size() < 2) return {};
  const field::DistanceNodes nodes(bores);
  Neighbourhood around;
  around.distance = nodes.nodes();
  around.count.assign(around.distance.size(), 0.0);
  const double each = 2 / static_cast<double>(bores.size());  // a pair is seen from both its ends
  for (std::size_t a = 0; a < bores.size(); ++a) {
    for (std::size_t b = 0; b < a; ++b) nodes.share(field::distance(bores[a], bores[b]), each, around.count);
  }
  return around;
}

ErrorResponses error_responses(const assembly::Assembly& assembly) {
  const long last = assembly.hours();
  const std::vector<long> hours = hours_from(early_hours, last);
  const LongTimeMarches late(assembly, hours);
  const LongTime coarse = late.march({1, 0.25, 1}, last);
  const Values rings = difference(coarse.sum(), late.march({2, 0.25, 1}, last).sum(), rest_of_rings);
  Values layers = difference(late.march({0.5, 1, 1}, hours_per_year).sum(),
                             late.march({0.5, 2, 1}, hours_per_year).sum(), rest_of_layers);
  if (layers.size() < hours.size()) {
    layers = continued(layers, difference(coarse.sum(), late.march({1, 0.5, 1}, last).sum(), 1));
  }
  const auto early = [&](const response::Refinement& by) {
    const model::Scenario bore = response::lone_bore(assembly, by);
    return response::hourly_rise(assembly::assemble(bore, assembly), early_hours);
  };
  const Values run = early({});
  ErrorResponses responses;
  const long interval = std::lround(assembly.multirate.update_interval / seconds_per_hour);
  Values rise = run;
  if (close_bores(assembly.bores)) {
    const std::vector<long> from_the_start = hours_from(1, last);
    const LongTimeMarches soon(assembly, from_the_start);
    responses.neighbours = at_refreshes(interval, from_the_start, soon.march({1, 0.25, 1}, last).neighbours);
    for (std::size_t n = 0; n < rise.size(); ++n) rise[n] += responses.neighbours.after(static_cast<long>(n));
  } else {
    responses.neighbours = at_refreshes(interval, hours, coarse.neighbours);
  }
  responses.rise = joined(rise, hours, coarse.sum());
  responses.step = joined(difference(run, early({1, 1, 4}), rest_of_step), {early_hours}, {0});
  responses.rings = joined(difference(run, early({2, 1, 1}), rest_of_rings), hours, rings);
  responses.layers = joined(difference(run, early({1, 2, 1}), rest_of_layers), hours, layers);
  return responses;
}

}  // namespace stillground::forecast
