#include "engine/run/warnings.hpp"

#include <fmt/format.h>

#include <cmath>

#include "engine/base/calendar.hpp"
#include "engine/materials/fluid.hpp"
#include "engine/run/warm_warnings.hpp"

namespace stillground::run {

namespace {

constexpr double ice = 273.15;

double celsius(double kelvin) {
  return kelvin - ice;
}

void add(std::vector<Warning>& to, const std::vector<Warning>& from) {
  to.insert(to.end(), from.begin(), from.end());
}

std::string in_words(double reynolds) {
  const auto regime = materials::regime(reynolds);
  return fmt::format(
      "{} (Re {:.0f})",
      regime == materials::Regime::transition ? "between laminar and turbulent" : materials::regime_name(regime),
      reynolds);
}

std::string asked_of_flow(const model::Scenario& scenario) {
  return fmt::format("Re {:g} and more (flow.reynolds_min)", scenario.flow.reynolds_min);
}

/// Full flow of fluid as cold as the limits allow: the design hour that the user foresees.
std::vector<Warning> slow_at_the_limit(const Assembly& assembly) {
  const model::Scenario& scenario = assembly.scenario;
  for (const model::Limit& limit : scenario.limits) {
    if (limit.quantity != model::Limit::Quantity::eft || limit.side != model::Limit::Side::least) continue;
    const Film cold = film(scenario, assembly.fluid.flow_per_bore, limit.value);
    if (cold.reynolds >= scenario.flow.reynolds_min) continue;
    return {{scenario.place("flow"),
             fmt::format("at the least EFT allowed, {:.1f} degC, the flow in the loops is {}", celsius(limit.value),
                         in_words(cold.reynolds)),
             asked_of_flow(scenario)}};
  }
  return {};
}

}  // namespace

std::vector<Warning> warnings_before(const Assembly& assembly) {
  const model::Scenario& scenario = assembly.scenario;
  std::vector<Warning> warnings = scenario.warnings;
  add(warnings, assembly.warnings);
  add(warnings, materials::fluid_warnings(scenario.fluid, assembly.fluid.reference, assembly.fluid.reference,
                                          scenario.place("fluid")));
  const Film at = film(scenario, assembly.fluid.flow_per_bore, assembly.fluid.reference);
  if (at.regime == materials::Regime::laminar || at.regime == materials::Regime::transition) {
    warnings.push_back({scenario.place("flow"),
                        fmt::format("the flow in the loops is {} at the ground's {:.1f} degC: the film coefficient is "
                                    "uncertain",
                                    in_words(at.reynolds), celsius(assembly.fluid.reference)),
                        "turbulent from Re 4000"});
  }
  add(warnings, slow_at_the_limit(assembly));
  if (scenario.bore.resistance) {
    warnings.push_back(
        {scenario.place("bore.resistance"),
         fmt::format("the measured bore resistance of {:g} K m/W replaces the computed one at every flow",
                     *scenario.bore.resistance),
         ""});
  }
  return warnings;
}

std::vector<Warning> warnings_after(const Assembly& assembly, const Tally& tally) {
  const model::Scenario& scenario = assembly.scenario;
  const auto& pumps = assembly.problem.pumps;
  std::vector<Warning> warnings;
  const auto curve = [&](long hours, const std::optional<loop::CopCurve>& cop, const char* leaf, const char* duty) {
    if (hours == 0) return;
    warnings.push_back(
        {scenario.place(leaf),
         fmt::format("in {} hours of {} the EFT lay outside the curve; its end value was held", hours, duty),
         fmt::format("{:g} to {:g} degC", celsius(cop->least_eft()), celsius(cop->most_eft()))});
  };
  curve(tally.beyond_heating_curve, pumps.heating, "heat_pump.heating_cop", "heating");
  curve(tally.beyond_hot_water_curve, pumps.hot_water, "heat_pump.hot_water_cop", "hot water");
  curve(tally.beyond_cooling_curve, pumps.cooling, "heat_pump.cooling_cop", "cooling");
  const double freezing = materials::freezing_point(scenario.fluid);
  if (tally.coldest_fluid < freezing) {
    warnings.push_back(
        {scenario.place("fluid"),
         fmt::format("the fluid fell to {:.1f} degC; it freezes at {:.1f} degC and nothing here models ice",
                     celsius(tally.coldest_fluid), celsius(freezing)),
         ""});
  }
  add(warnings, warm_warnings(scenario, tally.warmest_fluid));
  if (tally.coldest_wall < ice) {
    warnings.push_back(
        {scenario.place("ground"),
         fmt::format("the ground at a bore wall fell to {:.1f} degC; freezing of its water is not modelled",
                     celsius(tally.coldest_wall)),
         "conduction above 0 degC"});
  }
  if (tally.flowing_hours > 0 && tally.design.reynolds < scenario.flow.reynolds_min) {
    warnings.push_back(
        {scenario.place("flow"),
         fmt::format("at the design hour, {}, when the fluid came back coldest ({:.1f} degC), the flow in the loops "
                     "was {}",
                     iso_hour(scenario.run.start, static_cast<double>(tally.design.hour)), celsius(tally.design.eft),
                     in_words(tally.design.reynolds)),
         asked_of_flow(scenario)});
  }
  if (assembly.merges() && tally.group_deviation > scenario.run.group_error) {
    warnings.push_back({scenario.place("run.group_error"),
                        fmt::format("bores of a merged group had neighbours' effects up to {:.3g} K from the group's; "
                                    "run again with a smaller bound",
                                    tally.group_deviation),
                        fmt::format("up to {:g} K", scenario.run.group_error)});
  }
  if (tally.laminar_hours > 0) {
    warnings.push_back({scenario.place("flow"),
                        fmt::format("the flow in the loops was laminar in {} of {} hours with flow",
                                    tally.laminar_hours, tally.flowing_hours),
                        "turbulent from Re 4000"});
  }
  return warnings;
}

}  // namespace stillground::run
