#include "engine/job/warnings.hpp"

#include <fmt/format.h>

#include <cmath>

#include "engine/assembly/ground_heat.hpp"
#include "engine/assembly/shown.hpp"
#include "engine/base/calendar.hpp"
#include "engine/base/hour_span.hpp"
#include "engine/base/temperature.hpp"
#include "engine/job/warm_warnings.hpp"
#include "engine/job/warnings_parts.hpp"
#include "engine/materials/fluid.hpp"

namespace stillground::job {

namespace {

void add(std::vector<Warning>& to, const std::vector<Warning>& from) {
  to.insert(to.end(), from.begin(), from.end());
}

}  // namespace

std::vector<Warning> warnings_before(const assembly::Assembly& assembly) {
  const model::Scenario& scenario = assembly.scenario;
  std::vector<Warning> warnings = scenario.warnings;
  add(warnings, assembly.warnings);
  add(warnings, materials::fluid_warnings(scenario.fluid, assembly.fluid.reference, assembly.fluid.reference,
                                          scenario.place("fluid"), scenario.units));
  const assembly::GroundHeats heats = assembly::ground_heats(assembly);
  add(warnings, bore_warnings(assembly));
  add(warnings, flow_warnings(assembly));
  add(warnings, heat_warnings(assembly, heats));
  add(warnings, limit_warnings(assembly, heats));
  add(warnings, cop_warnings(scenario));
  add(warnings, calendar_warnings(assembly));
  if (assembly.response_test) warnings.push_back(assembly::measured_resistance(scenario, *assembly.response_test));
  return warnings;
}

std::vector<Warning> warnings_after(const assembly::Assembly& assembly, const simulation::Statistics& statistics) {
  const model::Scenario& scenario = assembly.scenario;
  const auto& pumps = assembly.problem.pumps;
  std::vector<Warning> warnings;
  const auto curve = [&](long hours, const std::optional<loop::CopCurve>& cop, const char* leaf, const char* duty) {
    if (hours == 0) return;
    warnings.push_back(
        {scenario.place(leaf),
         fmt::format("in {} hours of {} the EFT lay outside the curve; its end value was held", hours, duty),
         fmt::format("{} to {}", assembly::shown_temperature(scenario, cop->least_eft()),
                     assembly::shown_temperature(scenario, cop->most_eft()))});
  };
  curve(statistics.beyond_heating_curve, pumps.heating, "heat_pump.heating_cop", "heating");
  curve(statistics.beyond_hot_water_curve, pumps.hot_water, "heat_pump.hot_water_cop", "hot water");
  curve(statistics.beyond_cooling_curve, pumps.cooling, "heat_pump.cooling_cop", "cooling");
  const double freezing = materials::freezing_point(scenario.fluid);
  if (statistics.coldest_fluid < freezing) {
    warnings.push_back({scenario.place("fluid"),
                        fmt::format("the fluid fell to {}; it freezes at {} and nothing here models ice",
                                    assembly::shown_temperature(scenario, statistics.coldest_fluid),
                                    assembly::shown_temperature(scenario, freezing)),
                        ""});
  }
  add(warnings, warm_warnings(scenario, statistics.warmest_fluid));
  if (statistics.coldest_wall < zero_celsius) {
    warnings.push_back({scenario.place("ground"),
                        fmt::format("the ground at a bore wall fell to {}; freezing of its water is not modelled",
                                    assembly::shown_temperature(scenario, statistics.coldest_wall)),
                        "conduction above " + assembly::shown(scenario, 0, "degC", 0)});
  }
  if (statistics.flowing_hours > 0 && statistics.design.reynolds < scenario.flow.reynolds_min) {
    warnings.push_back(
        {scenario.place("flow"),
         fmt::format("at the design hour, {}, when the fluid came back coldest ({}), the flow in the loops "
                     "was {}",
                     hour_span(scenario.run.start, statistics.design.hour),
                     assembly::shown_temperature(scenario, statistics.design.eft),
                     flow_in_words(statistics.design.reynolds)),
         asked_of_flow(scenario)});
  }
  if (assembly.merges() && statistics.group_deviation > scenario.run.group_error) {
    warnings.push_back({scenario.place("run.group_error"),
                        fmt::format("bores of a merged group had neighbours' effects up to {:.3g} K from the group's; "
                                    "run again with a smaller bound",
                                    statistics.group_deviation),
                        fmt::format("up to {:g} K", scenario.run.group_error)});
  }
  if (statistics.laminar_hours > 0) {
    warnings.push_back({scenario.place("flow"),
                        fmt::format("the flow in the loops was laminar in {} of {} hours with flow",
                                    statistics.laminar_hours, statistics.flowing_hours),
                        "turbulent from Re 4000"});
  }
  return warnings;
}

}  // namespace stillground::job
