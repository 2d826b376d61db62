#include <fmt/format.h>

#include <algorithm>

#include "engine/assembly/shown.hpp"
#include "engine/assembly/work_periods.hpp"
#include "engine/job/warnings_parts.hpp"
#include "engine/loop/flow_rule.hpp"
#include "engine/materials/film.hpp"

namespace stillground::job {

namespace {

/// Above it pipes take too much pump power and bends wear [m/s].
constexpr double fast_flow = 2.5;

/// What flows at full flow through the bore that is given most, in the period when it is given most [kg/s].
double largest_flow(const assembly::Assembly& assembly) {
  double most = 0;
  for (const assembly::WorkPeriod& period : assembly::work_periods(assembly)) most = std::max(most, period.most_bore);
  return most * assembly.fluid.density;
}

void at_the_ground(const assembly::Assembly& assembly, std::vector<Warning>& warnings) {
  const model::Scenario& scenario = assembly.scenario;
  const bore::PipeFlow at = assembly::pipe_flow(scenario, assembly.fluid.flow_per_bore, assembly.fluid.reference);
  if (at.regime != materials::Regime::laminar && at.regime != materials::Regime::transition) return;
  warnings.push_back(
      {scenario.place("flow"),
       fmt::format("the flow in the loops is {} at the ground's {}: the film coefficient is uncertain",
                   flow_in_words(at.reynolds), assembly::shown_temperature(scenario, assembly.fluid.reference)),
       "turbulent from Re 4000"});
}

/// Full flow of fluid as cold as the limits allow: the design hour that the user expects.
void at_the_limit(const assembly::Assembly& assembly, std::vector<Warning>& warnings) {
  const model::Scenario& scenario = assembly.scenario;
  for (const model::Limit& limit : scenario.limits) {
    if (limit.quantity != model::Limit::Quantity::eft || limit.side != model::Limit::Side::least) continue;
    const bore::PipeFlow cold = assembly::pipe_flow(scenario, assembly.fluid.flow_per_bore, limit.value);
    if (cold.reynolds >= scenario.flow.reynolds_min) continue;
    warnings.push_back({scenario.place("flow"),
                        fmt::format("at the least EFT allowed, {}, the flow in the loops is {}",
                                    assembly::shown_temperature(scenario, limit.value), flow_in_words(cold.reynolds)),
                        asked_of_flow(scenario)});
  }
}

void at_least_flow(const assembly::Assembly& assembly, std::vector<Warning>& warnings) {
  const model::Scenario& scenario = assembly.scenario;
  const double part = loop::least_part(scenario.flow);
  if (part == 1) return;
  const bore::PipeFlow slow =
      assembly::pipe_flow(scenario, part * assembly.fluid.flow_per_bore, assembly.fluid.reference);
  if (slow.reynolds >= scenario.flow.reynolds_min) return;
  warnings.push_back(
      {scenario.place("flow"),
       fmt::format("at the least flow, {:.0f} % of full, the flow in the loops is {} at the ground's {}", 100 * part,
                   flow_in_words(slow.reynolds), assembly::shown_temperature(scenario, assembly.fluid.reference)),
       asked_of_flow(scenario)});
}

void too_fast(const assembly::Assembly& assembly, std::vector<Warning>& warnings) {
  const model::Scenario& scenario = assembly.scenario;
  const double velocity = assembly::pipe_flow(scenario, largest_flow(assembly), assembly.fluid.reference).velocity;
  if (velocity <= fast_flow) return;
  warnings.push_back(
      {scenario.place("flow"),
       fmt::format("the fluid runs at {} in the pipe at full flow", assembly::shown(scenario, velocity, "m s-1", 1)),
       fmt::format("usual up to {}; common practice, no source", assembly::shown(scenario, fast_flow, "m s-1", 1))});
}

/// A peak within the hour is met at the flow that its mean asks for.
void peak_at_mean_flow(const model::Scenario& scenario, std::vector<Warning>& warnings) {
  if (!scenario.peak || scenario.flow.varies == model::Flow::Varies::never) return;
  warnings.push_back(
      {scenario.place("loads.peak"),
       "the flow follows the load from hour to hour only: a peak within the hour is met at the hour's flow",
       "flow that does not vary with the load"});
}

}  // namespace

std::string flow_in_words(double reynolds) {
  const auto regime = materials::regime(reynolds);
  return fmt::format(
      "{} (Re {:.0f})",
      regime == materials::Regime::transition ? "between laminar and turbulent" : materials::regime_name(regime),
      reynolds);
}

std::string asked_of_flow(const model::Scenario& scenario) {
  return fmt::format("Re {:g} and more (flow.reynolds_min)", scenario.flow.reynolds_min);
}

std::vector<Warning> flow_warnings(const assembly::Assembly& assembly) {
  std::vector<Warning> warnings;
  at_the_ground(assembly, warnings);
  at_the_limit(assembly, warnings);
  at_least_flow(assembly, warnings);
  too_fast(assembly, warnings);
  peak_at_mean_flow(assembly.scenario, warnings);
  return warnings;
}

}  // namespace stillground::job
