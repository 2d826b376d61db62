#include "engine/screen/estimate.hpp"

#include <algorithm>
#include <array>

#include "engine/assembly/phases.hpp"
#include "engine/base/temperature.hpp"
#include "engine/loop/flow_rule.hpp"
#include "engine/response/exponentials.hpp"
#include "engine/response/operating_fraction.hpp"
#include "engine/response/superposition.hpp"
#include "engine/screen/flow_propagators.hpp"
#include "engine/screen/undisturbed.hpp"
#include "engine/simulation/hour_summary.hpp"
#include "engine/simulation/plausible.hpp"

namespace stillground::screen {

namespace {

constexpr double shortest = 180;                // time constant [s]
constexpr double slow = 8 * seconds_per_hour;   // from this time constant on a term is straight within an hour
constexpr std::size_t layers_of_a_circuit = 8;  // down and up once

void check(const assembly::Assembly& assembly) {
  if (assembly::Phases(assembly).all_alike()) return;
  throw InputError(
      assembly.scenario.place("run.method"), "run.method",
      "screening superposes one step response of the whole field: bores that start or stop within the run, "
      "or have a flow_weight of their own, need `method: march`");
}

/// U(t) = instant + sum_j A_j (1 - exp(-t/tau_j)), as felt within an hour: terms with tau_j >= `slow` by their slope
/// A_j/tau_j.
NearGround near_ground(const response::ExponentialResponse& response) {
  NearGround near{response.instant, {}, 0};
  for (const response::Exponential& term : response.terms) {
    if (term.time_constant < slow) {
      near.terms.push_back(term);
    } else {
      near.drift += term.amplitude / term.time_constant;
    }
  }
  return near;
}

std::vector<response::Exponential> slow_terms(const response::ExponentialResponse& response) {
  std::vector<response::Exponential> terms;
  for (const response::Exponential& term : response.terms) {
    if (term.time_constant >= slow) terms.push_back(term);
  }
  return terms;
}

/// The part of the undisturbed profile that a wall keeps though the fluid levels it: R/(R + U), R the bore's resistance
/// R_b over the operating fraction, U the ground's step response after a season (two months).
double kept_of_profile(const assembly::Assembly& assembly, const response::ExponentialResponse& response) {
  const model::Scenario& scenario = assembly.scenario;
  const bore::PipeFlow film = assembly::pipe_flow(scenario, assembly.fluid.flow_per_bore, assembly.fluid.reference);
  const auto computed =
      assembly::resistances(scenario, assembly::mean_solid(assembly.problem).conductivity, film.films);
  const double bore =
      assembly::with_measured(computed, assembly.fluid).resistance[0] / response::operating_fraction(assembly);
  return bore / (bore + response.after(seconds_per_year / 6));
}

/// Of each of `layers` equal layers of the group with most bores, how far the undisturbed ground's yearly mean lies
/// above that of the bore [K].
std::vector<double> undisturbed_profile(const march::Problem& problem, std::size_t layers) {
  const auto fewer = [](const march::Group& a, const march::Group& b) { return a.members < b.members; };
  const march::Group& group = *std::max_element(problem.groups.begin(), problem.groups.end(), fewer);
  double length = 0;
  for (std::size_t k = group.first; k < group.end; ++k) length += group.fraction[k] * problem.grid.height(k);
  std::vector<double> profile(layers, 0.0);
  double from = 0, mean = 0;  // in parts of the bore
  for (std::size_t k = group.first; k < group.end; ++k) {
    const double to = from + group.fraction[k] * problem.grid.height(k) / length;
    const double there = problem.undisturbed.yearly_mean()[k];
    mean += (to - from) * there;
    for (std::size_t j = 0; j < layers; ++j) {
      const double n = static_cast<double>(layers), top = static_cast<double>(j) / n;
      profile[j] += n * std::max(0.0, std::min(to, top + 1 / n) - std::max(from, top)) * there;
    }
    from = to;
  }
  for (double& there : profile) there -= mean;
  return profile;
}

/// The circuit that stands for all: bores of the mean depth.
CircuitShape shape_of(const assembly::Assembly& assembly, const response::ExponentialResponse& response) {
  CircuitShape shape;
  shape.bores = static_cast<std::size_t>(assembly.scenario.flow.in_series);
  shape.passes = assembly.problem.passes;
  const std::size_t layers = std::max<std::size_t>(3, layers_of_a_circuit / (shape.bores * shape.passes));
  double metres = 0;
  for (const auto& bore : assembly.bores) metres += bore.depth;
  shape.layer_height = metres / static_cast<double>(assembly.bores.size() * layers);
  shape.profile = undisturbed_profile(assembly.problem, layers);
  const double kept = kept_of_profile(assembly, response);
  for (double& there : shape.profile) there *= kept;
  return shape;
}

/// Circuit, near ground and slow ground on their way through the hours.
class Screening {
 public:
  Screening(const assembly::Assembly& assembly, const response::FieldResponse& field,
            const response::ExponentialResponse& response)
      : assembly_(assembly),
        plausible_(assembly),
        undisturbed_(assembly, field),
        slow_(slow_terms(response), seconds_per_hour),
        ground_(near_ground(response)),
        propagators_(assembly, shape_of(assembly, response), ground_),
        circuits_(static_cast<double>(assembly.bores.size()) / assembly.scenario.flow.in_series),
        peak_(std::max(assembly.loads.peak(), 1e-9)) {
    const Circuit& circuit = propagators_.circuit();
    const auto on_modes = [&](const Eigen::RowVectorXd& of) {
      const Eigen::RowVectorXd on = of.head(circuit.lasting()) * propagators_.modes();
      Amplitudes result{};
      std::copy(on.begin(), on.end(), result.begin());
      return result;
    };
    state_ = on_modes((undisturbed_.at(0) * circuit.at_rest() + circuit.profile_at_rest()).transpose());
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

 private:
  record::Hour any_hour() {
    const loop::Demand demand = assembly_.loads.hour(statistics_.hour);
    const double part = loop::flow_part(assembly_.scenario.flow, demand.size() / peak_);
    std::array<double, HourlyPropagator::columns> driven{};
    std::copy(state_.begin(), state_.end(), driven.begin());
    const double ambient = undisturbed_.at(statistics_.hour) + slow_.rise();
    const double ambient_after = undisturbed_.at(statistics_.hour + 1) + slow_.history_term();
    driven[HourlyPropagator::ambient] = ambient;
    driven[HourlyPropagator::change] = ambient_after - ambient;
    driven[HourlyPropagator::profile] = 1;

    record::Hour hour;
    hour.heating = demand.heating + demand.hot_water;
    hour.cooling = demand.cooling + demand.cooling_direct;
    const FlowPropagators::Flowing* flowing = part > 0 ? &propagators_.flowing(part, of_state(fluid_)) : nullptr;
    const HourlyPropagator& propagator = flowing ? flowing->propagator : propagators_.standing();
    auto after = propagator.times(driven);
    if (flowing) {
      hour.flow = part * circuits_ * assembly_.fluid.flow_per_bore;
      const loop::OperatingPoint point =
          operating_point(demand, propagator, after[HourlyPropagator::outlet], hour.flow);
      hour.eft = point.eft;
      hour.lft = point.lft;
      hour.heat_to_ground = point.to_ground;
      hour.power = point.power;
      const double load = point.to_ground / circuits_;
      for (std::size_t row = 0; row < HourlyPropagator::rows; ++row)
        after[row] += propagator.at(row, HourlyPropagator::load) * load;
    } else {
      hour.eft = after[HourlyPropagator::outlet];
      hour.lft = after[HourlyPropagator::down];
    }
    std::copy(after.begin(), after.begin() + HourlyPropagator::modes, state_.begin());
    const double heat = after[HourlyPropagator::heat];
    slow_.advance(heat / seconds_per_hour);

    ++statistics_.hour;
    simulation::update(statistics_, {hour.eft, hour.lft, hour.flow > 0, flowing ? flowing->reynolds : 0}, demand,
                       assembly_.problem.pumps);
    if (std::min(hour.eft, hour.lft) < zero_celsius) {
      const double wall =
          ambient_after + of_state(terms_) + ground_.drift * heat + ground_.instant * heat / seconds_per_hour;
      statistics_.coldest_wall = std::min(statistics_.coldest_wall, wall);
    }
    return hour;
  }

  using Amplitudes = std::array<double, HourlyPropagator::modes>;

  double of_state(const Amplitudes& parts) const {
    double sum = 0;
    for (std::size_t i = 0; i < parts.size(); ++i) sum += parts[i] * state_[i];
    return sum;
  }

  /// The hour is linear in its heat Q: EFT = E_0 + s Q/(m c), E_0 without heat, and LFT = EFT + Q/(m c): a line
  /// EFT = gain LFT + offset (loop::outlet_under_load). Q follows from the EFT.
  loop::OperatingPoint operating_point(const loop::Demand& demand, const HourlyPropagator& propagator, double unloaded,
                                       double flow) const {
    const double heat_rate = flow * assembly_.fluid.heat_capacity;
    const double slope = propagator.at(HourlyPropagator::outlet, HourlyPropagator::load) / circuits_ * heat_rate;
    return loop::operating_point(loop::outlet_under_load(unloaded, slope, heat_rate), demand, assembly_.problem.pumps);
  }

  const assembly::Assembly& assembly_;
  simulation::Plausible plausible_;
  FieldsUndisturbed undisturbed_;
  response::RunningSuperposition slow_;
  NearGround ground_;
  FlowPropagators propagators_;
  double circuits_;
  double peak_;  // largest load of any hour [W]
  Amplitudes state_{};
  Amplitudes fluid_{}, terms_{};  // what adds up to the mean fluid, and to the near ground's terms
  simulation::Statistics statistics_;
};

}  // namespace

Estimate superposed(const assembly::Assembly& assembly, const response::FieldResponse& response, const TakeYear& take) {
  const response::Fit fitted = response::fit(response.samples, shortest, 4 * assembly.duration());
  Screening screening(assembly, response, fitted.response);
  std::vector<record::Hour> hours(hours_per_year);
  for (int year = 0; year < assembly.scenario.run.years; ++year) {
    for (record::Hour& hour : hours) hour = screening.hour();
    take(hours);
  }
  return {screening.statistics(), fitted.misfit};
}

response::FieldResponse layout_response(const assembly::Assembly& assembly) {
  check(assembly);
  return response::field_response(assembly);
}

Estimate estimate(const assembly::Assembly& assembly, const TakeYear& take) {
  return superposed(assembly, layout_response(assembly), take);
}

}  // namespace stillground::screen
