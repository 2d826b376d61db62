#include "engine/run/warnings.hpp"

#include <fmt/format.h>

#include <cmath>

#include "engine/base/calendar.hpp"
#include "engine/base/hour_span.hpp"
#include "engine/materials/fluid.hpp"
#include "engine/run/ground_heat.hpp"
#include "engine/run/shown.hpp"
#include "engine/run/warm_warnings.hpp"
#include "engine/run/warnings_parts.hpp"

namespace stillground::run {

namespace {

constexpr double ice = 273.15;

void add(std::vector<Warning>& to, const std::vector<Warning>& from) {
  to.insert(to.end(), from.begin(), from.end());
}

}  // namespace

std::vector<Warning> warnings_before(const Assembly& assembly) {
  const model::Scenario& scenario = assembly.scenario;
  std::vector<Warning> warnings = scenario.warnings;
  add(warnings, assembly.warnings);
  add(warnings, materials::fluid_warnings(scenario.fluid, assembly.fluid.reference, assembly.fluid.reference,
                                          scenario.place("fluid"), scenario.units));
  const GroundHeats heats = ground_heats(assembly);
  add(warnings, bore_warnings(assembly));
  add(warnings, flow_warnings(assembly));
  add(warnings, heat_warnings(assembly, heats));
  add(warnings, limit_warnings(assembly, heats));
  add(warnings, cop_warnings(scenario));
  add(warnings, calendar_warnings(assembly));
  if (assembly.response_test) warnings.push_back(measured_resistance(scenario, *assembly.response_test));
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
         fmt::format("{} to {}", shown_temperature(scenario, cop->least_eft()),
                     shown_temperature(scenario, cop->most_eft()))});
  };
  curve(tally.beyond_heating_curve, pumps.heating, "heat_pump.heating_cop", "heating");
  curve(tally.beyond_hot_water_curve, pumps.hot_water, "heat_pump.hot_water_cop", "hot water");
  curve(tally.beyond_cooling_curve, pumps.cooling, "heat_pump.cooling_cop", "cooling");
  const double freezing = materials::freezing_point(scenario.fluid);
  if (tally.coldest_fluid < freezing) {
    warnings.push_back(
        {scenario.place("fluid"),
         fmt::format("the fluid fell to {}; it freezes at {} and nothing here models ice",
                     shown_temperature(scenario, tally.coldest_fluid), shown_temperature(scenario, freezing)),
         ""});
  }
  add(warnings, warm_warnings(scenario, tally.warmest_fluid));
  if (tally.coldest_wall < ice) {
    warnings.push_back({scenario.place("ground"),
                        fmt::format("the ground at a bore wall fell to {}; freezing of its water is not modelled",
                                    shown_temperature(scenario, tally.coldest_wall)),
                        "conduction above " + shown(scenario, 0, "degC", 0)});
  }
  if (tally.flowing_hours > 0 && tally.design.reynolds < scenario.flow.reynolds_min) {
    warnings.push_back(
        {scenario.place("flow"),
         fmt::format("at the design hour, {}, when the fluid came back coldest ({}), the flow in the loops "
                     "was {}",
                     hour_span(scenario.run.start, tally.design.hour), shown_temperature(scenario, tally.design.eft),
                     flow_in_words(tally.design.reynolds)),
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
