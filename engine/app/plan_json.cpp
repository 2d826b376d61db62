#include <cmath>
#include <nlohmann/json.hpp>
#include <utility>

#include "engine/app/plan.hpp"
#include "engine/program/shown_json.hpp"

namespace stillground::app {

namespace {

using nlohmann::ordered_json;

ordered_json quantity(double value, const char* units) {
  ordered_json q;
  q["value"] = std::isfinite(value) ? ordered_json(value) : ordered_json(nullptr);
  q["units"] = units;
  return q;
}

ordered_json celsius(double kelvin) {
  return quantity(kelvin - 273.15, "degC");
}

ordered_json flow_case(const run::FlowCase& flow) {
  ordered_json c;
  c["what"] = flow.what;
  c["fluid_temperature"] = celsius(flow.fluid_temperature);
  c["reynolds"] = flow.reynolds;
  c["regime"] = flow.regime;
  c["bore_resistance"] = quantity(flow.bore_resistance, "K m W-1");
  c["internal_resistance"] = quantity(flow.internal_resistance, "K m W-1");
  c["effective_resistance"] = quantity(flow.effective_resistance, "K m W-1");
  return c;
}

void add_field(ordered_json& j, const run::Plan& plan) {
  j["bores"] = plan.bores;
  j["groups"] = plan.groups;
  j["equal_groups"] = plan.equal_groups;
  j["group_error"] = quantity(plan.group_error, "K");
  j["active_length"] = quantity(plan.active_length, "m");
  j["drill_length"] = quantity(plan.drill_length, "m");
  j["nearest_spacing"] = quantity(plan.nearest_spacing, "m");
  j["conductivity"] = quantity(plan.conductivity, "W m-1 K-1");
  j["undisturbed"] = celsius(plan.undisturbed);
  j["fluid_volume"] = quantity(plan.fluid_volume, "m3");
  j["grout_volume"] = quantity(plan.grout_volume, "m3");
  j["pipe_length"] = quantity(plan.pipe_length, "m");
  j["freezing_point"] = celsius(plan.freezing_point);
  j["mass_flow"] = quantity(plan.mass_flow, "kg s-1");
}

void add_cells(ordered_json& j, const run::Plan& plan) {
  j["radial_cells"] = plan.radial_cells;
  j["axial_cells"] = plan.axial_cells;
  j["cells"] = plan.cells;
  j["outer_radius"] = quantity(plan.outer_radius, "m");
  j["grid_depth"] = quantity(plan.grid_depth, "m");
}

void add_heat(ordered_json& j, const run::Plan& plan) {
  j["heating"] = quantity(plan.heating, "J");
  j["cooling"] = quantity(plan.cooling, "J");
  j["heating_peak"] = quantity(plan.heating_peak, "W");
  j["cooling_peak"] = quantity(plan.cooling_peak, "W");
  j["heat_to_ground"] = quantity(plan.heat_to_ground, "J");
}

ordered_json eft_error(const record::ErrorEstimate& error) {
  ordered_json e;
  e["total"] = quantity(error.total, "K");
  e["step"] = quantity(error.step, "K");
  e["grid"] = quantity(error.grid, "K");
  e["refresh"] = quantity(error.refresh, "K");
  return e;
}

}  // namespace

std::string plan_json(const run::Plan& plan, UnitSystem system) {
  ordered_json j;
  j["title"] = plan.title;
  j["start"] = iso(plan.start);
  j["years"] = plan.years;
  j["step"] = quantity(plan.step, "s");
  add_field(j, plan);
  add_cells(j, plan);
  add_heat(j, plan);
  j["method"] = plan.screens ? "screening" : "march";
  if (!plan.screens) j["eft_error_estimate"] = eft_error(plan.eft_error);
  j["flow_cases"] = ordered_json::array();
  for (const auto& flow : plan.flow_cases) j["flow_cases"].push_back(flow_case(flow));
  if (!plan.screens) j["expected_time"] = quantity(plan.expected_seconds, "s");
  j["expected_size"] = quantity(plan.expected_bytes, "byte");
  j["warnings"] = ordered_json::array();
  for (const auto& warning : plan.warnings) j["warnings"].push_back(warning.line());
  j["cautions"] = plan.cautions;
  return program::in_system(std::move(j), system).dump(2) + "\n";
}

}  // namespace stillground::app
