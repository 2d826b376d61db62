#include "engine/screen/estimate.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <vector>

#include "engine/assembly/phases.hpp"
#include "engine/base/temperature.hpp"
#include "engine/loop/flow_rule.hpp"
#include "engine/response/single_bore.hpp"
#include "engine/screen/flow_propagators.hpp"
#include "engine/screen/wall_history.hpp"
#include "engine/screen/walls_undisturbed.hpp"
#include "engine/simulation/duties.hpp"
#include "engine/simulation/hour_summary.hpp"
#include "engine/simulation/plausible.hpp"

namespace stillground::screen {

namespace {

constexpr double slow = 8 * seconds_per_hour;  // from this time constant on a term is straight within an hour
constexpr std::size_t layers_of_a_wall = 2;

void check(const assembly::Assembly& assembly) {
  if (assembly::Phases(assembly).all_alike()) return;
  throw InputError(
      assembly.scenario.place("run.method"), "run.method",
      "screening superposes one step response of the whole field: bores that start or stop within the run, "
      "or have a flow_weight of their own, need `method: march`");
}

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

/// Pieces of a bore's wall, in parts of its depth: thin ones at the top, where the seasons are.
std::vector<double> wall_parts(std::size_t bores) {
  constexpr double thinnest = 0.1, growth = 2.2;  // against the thickest
  const std::size_t count = bores == 1 ? 8 : bores == 2 ? 6 : 4;
  std::vector<double> parts;
  for (double part = thinnest; parts.size() < count; part *= growth) parts.push_back(std::min(part, 1.0));
  const double sum = std::accumulate(parts.begin(), parts.end(), 0.0);
  for (double& part : parts) part /= sum;
  return parts;
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

/// Of each wall in the circuit's metres.
std::vector<double> parts_of(const CircuitShape& shape) {
  std::vector<double> parts;
  for (std::size_t wall = 0; wall < shape.walls(); ++wall) parts.push_back(shape.part_of(wall));
  return parts;
}

std::vector<std::size_t> pieces_of(const CircuitShape& shape) {
  std::vector<std::size_t> pieces;
  for (std::size_t wall = 0; wall < shape.walls(); ++wall) pieces.push_back(wall % shape.walls_of_a_bore());
  return pieces;
}

/// A layout's response as exponentials.
struct Answers {
  WallAnswers field, lone;

  Answers(const LayoutResponse& layout, double longest)
      : field(fitted(layout.field, longest)), lone(fitted(layout.lone, longest)) {}
};

/// Circuit, near ground and slow ground on their way through the hours.
class Screening {
 public:
  Screening(const assembly::Assembly& assembly, const std::vector<double>& parts, const Answers& answers)
      : assembly_(assembly),
        plausible_(assembly),
        shape_(shape_of(assembly, parts)),
        parts_(parts_of(shape_)),
        pieces_(pieces_of(shape_)),
        undisturbed_(assembly, parts),
        history_(shape_.bores, slow_terms(answers.field), slow_terms(answers.lone), seconds_per_hour),
        ground_(near_ground(answers.field)),
        propagators_(assembly, shape_, ground_, {history_, through_the_year()}),
        places_(propagators_.places()),
        circuits_(static_cast<double>(assembly.bores.size()) / assembly.scenario.flow.in_series),
        peak_(std::max(assembly.loads.peak(), 1e-9)),
        driven_(places_.columns(), 0.0),
        after_((places_.rows() + Pack::width - 1) / Pack::width),
        heat_(shape_.walls(), 0.0) {
    const Circuit& circuit = propagators_.circuit();
    const auto on_modes = [&](const Eigen::RowVectorXd& of) {
      const Eigen::RowVectorXd on = of * propagators_.modes();
      return std::vector<double>(on.begin(), on.end());
    };
    undisturbed_.begin_day(0);
    std::vector<double> ambient;
    for (std::size_t w = 0; w < shape_.walls(); ++w) ambient.push_back(undisturbed_.at(piece_of(w), 0));
    const auto at_rest = on_modes(circuit.at_rest(ambient).transpose());
    std::copy(at_rest.begin(), at_rest.end(), driven_.begin());
    fluid_ = on_modes(circuit.mean_fluid());
    terms_ = on_modes(circuit.near_ground());
  }

  record::Hour hour() {
    const long number = statistics_.hour;
    plausible_.loops(of_state(fluid_), number);  // maps are made for its temperature
    const record::Hour hour = [&] {
      try {
        return any_hour();
      } catch (const NumericsError& error) {
        plausible_.gave_up(error, number);
      }
    }();
    plausible_.fluid(hour.eft, hour.lft, number);
    return hour;
  }

  const simulation::Statistics& statistics() const { return statistics_; }
  double largest_rise() const { return largest_rise_; }

 private:
  /// The undisturbed walls at four instants of a year.
  std::vector<std::vector<double>> through_the_year() {
    std::vector<std::vector<double>> seen;
    for (const long day : {0, 91, 182, 273}) {
      seen.emplace_back(shape_.walls_of_a_bore());
      undisturbed_.look(day, seen.back());
    }
    return seen;
  }

  record::Hour any_hour() {
    if (statistics_.hour > 0 && statistics_.hour % 24 == 0) undisturbed_.begin_day(statistics_.hour / 24);
    const loop::Demand demand = assembly_.loads.hour(statistics_.hour);
    const double part = loop::flow_part(assembly_.scenario.flow, demand.size() / peak_);
    record::Hour hour;
    FlowPropagators::Flowing now{{&propagators_.standing(), nullptr}, {1, 0}, 0};
    if (part > 0) now = propagators_.flowing(part, of_state(fluid_));
    const double mean_after = drive_walls();
    std::fill(after_.begin(), after_.end(), Pack{});
    for (std::size_t i = 0; i < now.propagator.size(); ++i) {
      if (now.part.at(i) != 0) now.propagator.at(i)->add(now.part.at(i), driven_, after_);
    }
    if (part > 0) {
      hour.flow = part * circuits_ * assembly_.fluid.flow_per_bore;
      give_load(now, demand, hour);
    } else {
      hour.eft = after(places_.outlet());
      hour.lft = after(places_.down());
    }
    simulation::enter_duties(hour, demand, assembly_.problem.pumps);
    for (std::size_t i = 0; i < places_.modes; ++i) driven_[i] = after(i);
    double near = 0;  // of the mean wall by the hour's heat [K]
    for (std::size_t w = 0; w < heat_.size(); ++w) {
      const double heat = after(places_.heat(w)), part_of_wall = parts_[w];
      heat_[w] = heat / seconds_per_hour;
      near += part_of_wall * (ground_.drift[piece_of(w)] * heat + ground_.instant[piece_of(w)] * heat_[w]);
    }
    history_.advance(heat_);
    ++statistics_.hour;
    simulation::update(statistics_, {hour.eft, hour.lft, hour.flow > 0, now.reynolds}, demand, assembly_.problem.pumps);
    if (std::min(hour.eft, hour.lft) < zero_celsius) {
      const double wall = mean_after + of_state(terms_) + near;
      statistics_.coldest_wall = std::min(statistics_.coldest_wall, wall);
    }
    return hour;
  }

  std::size_t piece_of(std::size_t wall) const { return pieces_[wall]; }

  /// Enters every wall's ambient: what changes it within the hour is entered as the walls' mean change, and half of how
  /// one wall's change differs from that, as of the hour's middle. Returns the mean at the hour's end [K].
  double drive_walls() {
    const double start = static_cast<double>(statistics_.hour % 24) / 24, end = start + 1.0 / 24;
    const auto &rise = history_.rise(), &history = history_.history_term();
    double before = 0, after = 0, mean_rise = 0;
    for (std::size_t w = 0; w < shape_.walls(); ++w) {
      const double now = undisturbed_.at(piece_of(w), start) + rise[w];
      const double then = undisturbed_.at(piece_of(w), end) + history[w];
      before += parts_[w] * now;
      mean_rise += parts_[w] * rise[w];
      after += parts_[w] * then;
      driven_[places_.ambient(w)] = (now + then) / 2;
    }
    for (std::size_t w = 0; w < shape_.walls(); ++w) driven_[places_.ambient(w)] -= (after - before) / 2;
    largest_rise_ = std::max(largest_rise_, std::abs(mean_rise));
    driven_[places_.change()] = after - before;
    driven_[places_.load()] = 0;
    return after;
  }

  /// The hour's load [W], once it is known at which EFT the heat pumps give it.
  void give_load(const FlowPropagators::Flowing& now, const loop::Demand& demand, record::Hour& hour) {
    double outlet = 0;  // of a watt [K/W]
    for (std::size_t i = 0; i < now.propagator.size(); ++i) {
      if (now.part.at(i) != 0) outlet += now.part.at(i) * now.propagator.at(i)->at(places_.outlet(), places_.load());
    }
    const loop::OperatingPoint point = operating_point(demand, outlet, after(places_.outlet()), hour.flow);
    hour.eft = point.eft;
    hour.lft = point.lft;
    hour.heat_to_ground = point.to_ground;
    hour.power = point.power;
    for (std::size_t i = 0; i < now.propagator.size(); ++i) {
      if (now.part.at(i) != 0)
        now.propagator.at(i)->add_column(places_.load(), now.part.at(i) * point.to_ground / circuits_, after_);
    }
  }

  double after(std::size_t row) const { return after_[row / Pack::width].values[row % Pack::width]; }

  double of_state(const std::vector<double>& parts) const {
    double sum = 0;
    for (std::size_t i = 0; i < parts.size(); ++i) sum += parts[i] * driven_[i];
    return sum;
  }

  /// The hour is linear in its heat Q: EFT = E_0 + s Q/(m c), E_0 without heat, and LFT = EFT + Q/(m c): a line
  /// EFT = gain LFT + offset (loop::outlet_under_load). Q follows from the EFT.
  loop::OperatingPoint operating_point(const loop::Demand& demand, double outlet_per_load, double unloaded,
                                       double flow) const {
    const double heat_rate = flow * assembly_.fluid.heat_capacity;
    const double slope = outlet_per_load / circuits_ * heat_rate;
    return loop::operating_point(loop::outlet_under_load(unloaded, slope, heat_rate), demand, assembly_.problem.pumps);
  }

  const assembly::Assembly& assembly_;
  simulation::Plausible plausible_;
  CircuitShape shape_;
  std::vector<double> parts_;        // [wall] of the circuit's metres
  std::vector<std::size_t> pieces_;  // [wall] of its bore
  WallsUndisturbed undisturbed_;
  WallHistory history_;
  NearGround ground_;
  FlowPropagators propagators_;
  HourlyPropagator::Places places_;
  double circuits_;
  double peak_;                 // largest load of any hour [W]
  std::vector<double> driven_;  // the state's amplitudes and what drives them
  std::vector<Pack> after_;
  std::vector<double> heat_;           // [wall], of the hour [W/m]
  std::vector<double> fluid_, terms_;  // what adds up to the mean fluid, and to the near ground's terms
  simulation::Statistics statistics_;
  double largest_rise_ = 0;  // [K]
};

}  // namespace

Estimate superposed(const assembly::Assembly& assembly, const LayoutResponse& response, const TakeYear& take) {
  const Answers answers(response, 4 * assembly.duration());
  Screening screening(assembly, response.parts, answers);
  std::vector<record::Hour> hours(hours_per_year);
  for (int year = 0; year < assembly.scenario.run.years; ++year) {
    for (record::Hour& hour : hours) hour = screening.hour();
    take(hours);
  }
  return {screening.statistics(), answers.field.misfit, screening.largest_rise()};
}

LayoutResponse layout_response(const assembly::Assembly& assembly) {
  check(assembly);
  const int in_series = assembly.scenario.flow.in_series;
  LayoutResponse layout{wall_parts(static_cast<std::size_t>(in_series)), {}, {}};
  layout.field = response::field_response(assembly, layout.parts);
  if (in_series > 1) {
    const assembly::Assembly lone = assembly::assemble(response::lone_bore(assembly, {}), assembly);
    layout.lone = response::field_response(lone, layout.parts);
  }
  return layout;
}

Estimate estimate(const assembly::Assembly& assembly, const TakeYear& take) {
  return superposed(assembly, layout_response(assembly), take);
}

}  // namespace stillground::screen
