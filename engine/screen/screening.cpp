#include "engine/screen/screening.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/base/temperature.hpp"
#include "engine/loop/flow_rule.hpp"
#include "engine/simulation/duties.hpp"
#include "engine/simulation/hour_summary.hpp"

namespace stillground::screen {

namespace {

constexpr double slow = 8 * seconds_per_hour;  // from this time constant on a term is straight within an hour
constexpr std::size_t layers_of_a_wall = 2;
constexpr double near_enough = 3e-3;  // of EFT to the heat pumps' curve: leaves some 1e-6 [K]

WallAnswers slow_terms(const WallAnswers& answers) {
  return between(answers, slow, std::numeric_limits<double>::infinity());
}

/// U_w as felt within an hour: terms with tau_j >= `slow` by their slope A_wj/tau_j.
NearGround near_ground(const WallAnswers& answers) {
  NearGround near{answers.instant, between(answers, 0, slow), std::vector<double>(answers.pieces(), 0.0)};
  const WallAnswers straight = slow_terms(answers);
  for (std::size_t w = 0; w < answers.pieces(); ++w) {
    for (std::size_t j = 0; j < straight.time_constants.size(); ++j)
      near.drift[w] += straight.amplitudes[w][j] / straight.time_constants[j];
  }
  return near;
}

/// The circuit that stands for all: bores of the mean depth.
CircuitShape shape_of(const assembly::Assembly& assembly, const std::vector<double>& parts) {
  CircuitShape shape;
  shape.bores = static_cast<std::size_t>(assembly.scenario.flow.in_series);
  shape.passes = assembly.problem.passes;
  shape.layers_of_a_wall = layers_of_a_wall;
  double metres = 0;
  for (const auto& bore : assembly.bores) metres += bore.depth;
  for (const double part : parts)
    shape.wall_heights.push_back(part * metres / static_cast<double>(assembly.bores.size()));
  return shape;
}

/// The undisturbed walls at four instants of a year: [instant][piece].
std::vector<std::vector<double>> through_the_year(WallsUndisturbed& undisturbed, std::size_t pieces) {
  std::vector<std::vector<double>> seen;
  for (const long day : {0, 91, 182, 273}) {
    seen.emplace_back(pieces);
    undisturbed.look(day, seen.back());
  }
  return seen;
}

std::vector<Pack> packed(const Eigen::RowVectorXd& numbers) {
  std::vector<Pack> packs(packs_of(static_cast<std::size_t>(numbers.size())), Pack{});
  std::copy(numbers.begin(), numbers.end(), packs.front().values);
  return packs;
}

WallHistory history_of(const CircuitShape& shape, const LayoutAnswers& answers) {
  return {shape.bores, slow_terms(answers.field), slow_terms(answers.lone), seconds_per_hour};
}

CircuitWalls seen_by_modes(const assembly::Assembly& assembly, const CircuitShape& shape,
                           const LayoutAnswers& answers) {
  WallsUndisturbed undisturbed(assembly, answers.parts);
  return {history_of(shape, answers), through_the_year(undisturbed, answers.parts.size())};
}

}  // namespace

Screening::Screening(const assembly::Assembly& assembly, const LayoutAnswers& answers)
    : assembly_(assembly),
      plausible_(assembly),
      shape_(shape_of(assembly, answers.parts)),
      ground_(near_ground(answers.field)),
      walls_(shape_, WallsUndisturbed(assembly, answers.parts), history_of(shape_, answers)),
      propagators_(assembly, shape_, ground_, seen_by_modes(assembly, shape_, answers)),
      places_(propagators_.places()),
      circuits_(static_cast<double>(assembly.bores.size()) / assembly.scenario.flow.in_series),
      peak_(std::max(assembly.loads.peak(), 1e-9)),
      driven_(packs_of(places_.columns()), Pack{}),
      after_(packs_of(places_.rows())),
      heat_(shape_.bores, Pack{}) {
  const Circuit& circuit = propagators_.circuit();
  const std::vector<double> undisturbed = walls_.undisturbed_at_start();
  std::vector<double> ambient;
  for (std::size_t b = 0; b < shape_.bores; ++b) ambient.insert(ambient.end(), undisturbed.begin(), undisturbed.end());
  const Eigen::RowVectorXd at_rest = circuit.at_rest(ambient).transpose() * propagators_.modes();
  std::copy(at_rest.begin(), at_rest.end(), driven());
  fluid_ = packed(circuit.mean_fluid() * propagators_.modes());
  terms_ = packed(circuit.near_ground() * propagators_.modes());
}

record::Hour Screening::hour() {
  const long number = statistics_.hour;
  const double fluid = of_state(fluid_);
  plausible_.loops(fluid, number);  // maps are made for its temperature
  const record::Hour hour = [&] {
    try {
      return any_hour(fluid);
    } catch (const NumericsError& error) {
      plausible_.gave_up(error, number);
    }
  }();
  plausible_.fluid(hour.eft, hour.lft, number);
  return hour;
}

record::Hour Screening::any_hour(double fluid) {
  const loop::Demand demand = assembly_.loads.hour(statistics_.hour);
  const double part = loop::flow_part(assembly_.scenario.flow, demand.size() / peak_);
  record::Hour hour;
  FlowPropagators::Flowing now{{&propagators_.standing(), nullptr}, {1, 0}, 0};
  if (part > 0) now = propagators_.flowing(part, fluid);
  const WallsAmbient::Means walls = walls_.enter(statistics_.hour, driven() + places_.ambient(0));
  largest_rise_ = std::max(largest_rise_, std::abs(walls.from_heat));
  driven()[places_.change()] = walls.change;
  driven()[places_.load()] = 0;
  std::fill(after_.begin(), after_.end(), Pack{});
  for (std::size_t i = 0; i < now.propagator.size(); ++i) {
    if (now.part.at(i) != 0) now.propagator.at(i)->add(now.part.at(i), driven(), after_);
  }
  if (part > 0) {
    hour.flow = part * circuits_ * assembly_.fluid.flow_per_bore;
    give_load(now, demand, hour);
  } else {
    hour.eft = after(places_.outlet());
    hour.lft = after(places_.down());
  }
  simulation::enter_duties(hour, demand, assembly_.problem.pumps);
  std::copy_n(after_.front().values, places_.modes, driven());
  remember_heat(walls.at_end, hour);
  ++statistics_.hour;
  simulation::update(statistics_, {hour.eft, hour.lft, hour.flow > 0, now.reynolds}, demand, assembly_.problem.pumps);
  return hour;
}

/// The hour's load [W], once it is known at which EFT the heat pumps give it. The hour is linear in its heat Q:
/// EFT = E_0 + s Q/(m c), E_0 without heat, and LFT = EFT + Q/(m c): a line EFT = gain LFT + offset
/// (loop::outlet_under_load).
void Screening::give_load(const FlowPropagators::Flowing& now, const loop::Demand& demand, record::Hour& hour) {
  double outlet = 0;  // of a watt [K/W]
  for (std::size_t i = 0; i < now.propagator.size(); ++i) {
    if (now.part.at(i) != 0) outlet += now.part.at(i) * now.propagator.at(i)->at(places_.outlet(), places_.load());
  }
  const double heat_rate = hour.flow * assembly_.fluid.heat_capacity, slope = outlet / circuits_ * heat_rate;
  const loop::OperatingPoint point = loop::operating_point(
      loop::outlet_under_load(after(places_.outlet()), slope, heat_rate), demand, assembly_.problem.pumps, near_enough);
  hour.eft = point.eft;
  hour.lft = point.lft;
  hour.heat_to_ground = point.to_ground;
  hour.power = point.power;
  for (std::size_t i = 0; i < now.propagator.size(); ++i) {
    if (now.part.at(i) != 0)
      now.propagator.at(i)->add_column(places_.load(), now.part.at(i) * point.to_ground / circuits_, after_);
  }
}

/// `mean_wall`: what it would be without the hour's heat [K]; its own is asked for where it may freeze.
void Screening::remember_heat(double mean_wall, const record::Hour& hour) {
  const std::size_t pieces = shape_.walls_of_a_bore();
  for (std::size_t w = 0; w < places_.walls; ++w)
    heat_[w / pieces].values[w % pieces] = after(places_.heat(w)) / seconds_per_hour;
  walls_.advance(heat_);
  if (std::min(hour.eft, hour.lft) >= zero_celsius) return;
  double near = 0;  // of the mean wall by the hour's heat [K]
  for (std::size_t w = 0; w < places_.walls; ++w) {
    const double heat = heat_[w / pieces].values[w % pieces];
    near += shape_.part_of(w) * (ground_.drift[w % pieces] * seconds_per_hour + ground_.instant[w % pieces]) * heat;
  }
  statistics_.coldest_wall = std::min(statistics_.coldest_wall, mean_wall + of_state(terms_) + near);
}

}  // namespace stillground::screen
