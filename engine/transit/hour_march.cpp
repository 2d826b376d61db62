#include "engine/transit/hour_march.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

namespace stillground::transit {

namespace {

constexpr long run_up = 24;   // hours: fluid and grout forget within a few
constexpr long settling = 6;  // hours of it in which fluid and grout leave their rest and the shift is not told yet
constexpr long told_by = 4;   // hours with flow that the shift has to go by
constexpr long longest_run_up = 30 * 24;
constexpr long history = 20 * 24;  // hours before those in which the ground alone takes the heat
constexpr long at_once = 6;        // hours of it
constexpr long followed = 2;       // hours before in which fluid is followed as in the hour itself
constexpr Pace quick{.interval = 300, .least_step = 50, .film_follows = false};
constexpr Pace by_the_slice{.interval = 60, .least_step = 0, .film_follows = false};
constexpr Pace by_minutes{.interval = 60, .least_step = 0, .film_follows = true};

/// Of the difference between the run's EFT and the circuit's by which the circuit is shifted after an hour: the first
/// hours say where the field stands, the later ones are told apart from what single hours miss.
constexpr double least_gain = 0.25;

double mean(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

loop::Demand each(const loop::Demand& demand, double part) {
  return {demand.heating * part, demand.cooling * part, demand.cooling_direct * part, demand.to_ground * part,
          demand.hot_water * part};
}

}  // namespace

HourMarch::HourMarch(const assembly::Assembly& assembly, std::span<const record::Hour> hours)
    : assembly_(assembly),
      hours_(hours),
      phases_(assembly),
      regimes_(assembly.scenario, assembly.fluid, assembly.problem.grid, assembly.sections),
      fresh_(assembly) {}

HourMarch::Share HourMarch::share(long hour) const {
  Share share;
  for (std::size_t g = 0; g < assembly_.problem.groups.size(); ++g) {
    const march::Group& group = assembly_.problem.groups[g];
    if (group.returns && phases_.works(g, static_cast<double>(hour) * seconds_per_hour))
      share.circuits += group.members;
  }
  const record::Hour& run = hours_[static_cast<std::size_t>(hour)];
  if (share.circuits == 0 || run.flow <= 0) return {};
  share.flow = run.flow / share.circuits;
  share.heat = run.heat_to_ground / share.circuits;
  return share;
}

std::vector<double> HourMarch::flow(Circuit& circuit, const Share& share, const Pace& pace, double seconds,
                                    const std::function<double(double, double)>& heat) {
  const auto regime = [&](double fluid) -> const march::FlowRegime& {
    return regimes_.flowing(fluid, share.flow).march;
  };
  return circuit.flow({regime, heat}, pace, seconds);
}

/// The first hour followed before `hour`: so early that the shift has some hours with flow to go by.
long HourMarch::first_followed(long hour) const {
  long begin = std::max(0L, hour - run_up);
  long flowing = 0;
  for (long then = begin + settling; then < hour; ++then) flowing += hours_[static_cast<std::size_t>(then)].flow > 0;
  while (flowing < told_by && begin > 0 && hour - begin < longest_run_up) {
    --begin;
    flowing += hours_[static_cast<std::size_t>(begin + settling)].flow > 0;
  }
  return begin;
}

Circuit HourMarch::before(long hour) {
  const long begin = first_followed(hour);
  Circuit circuit = fresh_;
  circuit.set_ambient(static_cast<double>(begin) * seconds_per_hour, 0);
  for (long then = begin - std::min(history, begin) / at_once * at_once; then < begin; then += at_once) {
    double heat = 0;
    for (long one = then; one < then + at_once; ++one) heat += share(one).heat / at_once;
    circuit.warm_ground(at_once * seconds_per_hour, heat);
  }
  double warmer = 0, told = 0;
  for (long then = begin; then < hour; ++then) {
    const Share at = share(then);
    circuit.set_ambient((static_cast<double>(then) + 0.5) * seconds_per_hour, warmer);
    Pace pace = hour - then > followed ? quick : by_the_slice;
    pace.settles = begin > 0 && then < begin + settling;  // before the run's start all was at rest indeed
    if (at.flow <= 0) {
      circuit.stand(regimes_.standing().march, pace);
      continue;
    }
    const double eft = mean(flow(circuit, at, pace, seconds_per_hour, [&](double, double) { return at.heat; }));
    if (then < begin + settling) continue;
    const double off = hours_[static_cast<std::size_t>(then)].eft - eft;
    const double shift = off * std::max(1 / ++told, least_gain);
    warmer += shift;
    circuit.shift(shift);
  }
  circuit.set_ambient((static_cast<double>(hour) + 0.5) * seconds_per_hour, warmer);
  return circuit;
}

std::vector<double> HourMarch::course(Circuit circuit, long hour, const PeakAt& peak) {
  const Share at = share(hour);
  const loop::Demand demand = each(assembly_.loads.hour(hour), 1 / at.circuits);
  std::vector<double> minutes = flow(circuit, at, by_minutes, seconds_per_hour, [&](double second, double eft) {
    return loop::exchange(each(demand, peak.part(second)), assembly_.problem.pumps, eft).to_ground;
  });
  const long next = hour + 1;
  if (next >= static_cast<long>(hours_.size())) return minutes;
  const Share after = share(next);
  if (after.flow <= 0) return minutes;
  const double comes_back = std::min(seconds_per_hour, circuit.round_trip(at.flow * assembly_.fluid.heat_capacity));
  const auto more = flow(circuit, after, by_minutes, comes_back, [&](double, double) { return after.heat; });
  minutes.insert(minutes.end(), more.begin(), more.end());
  return minutes;
}

std::vector<std::vector<double>> HourMarch::courses(long hour) {
  const Circuit start = before(hour);
  if (!assembly_.scenario.peak) return {course(start, hour, {})};
  const model::LoadPeak peak = *assembly_.scenario.peak;
  const double last = seconds_per_hour - peak.duration;
  const double trip = start.round_trip(share(hour).flow * assembly_.fluid.heat_capacity);
  std::vector<std::vector<double>> courses;
  for (const double from : {0.0, std::max(0.0, last - trip), last})
    courses.push_back(course(start, hour, {peak, from}));
  return courses;
}

double PeakAt::part(double second) const {
  if (second >= from && second < from + peak.duration) return peak.factor;
  return (seconds_per_hour - peak.factor * peak.duration) / (seconds_per_hour - peak.duration);
}

}  // namespace stillground::transit
