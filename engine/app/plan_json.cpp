#include <cmath>
#include <nlohmann/json.hpp>
#include <utility>

#include "engine/app/plan.hpp"
#include "engine/app/plan_figures.hpp"
#include "engine/base/temperature.hpp"
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
  return quantity(kelvin - zero_celsius, "degC");
}

ordered_json flow_case(const job::FlowCase& flow, UnitSystem system) {
  ordered_json c;
  c["what"] = flow.what + " " + Figures{system}.temperature(flow.fluid_temperature);
  c["fluid_temperature"] = celsius(flow.fluid_temperature);
  c["reynolds"] = flow.reynolds;
  c["regime"] = flow.regime;
  c["bore_resistance"] = quantity(flow.bore_resistance, "K m W-1");
  c["internal_resistance"] = quantity(flow.internal_resistance, "K m W-1");
  c["effective_resistance"] = quantity(flow.effective_resistance, "K m W-1");
  return c;
}

/// What was entered, and the local resistance that follows: null where there is none.
ordered_json measured(const assembly::ResponseTest& test) {
  ordered_json m;
  m["effective"] = quantity(test.effective, "K m W-1");
  m["flow"] = quantity(1e3 * test.volume_flow, "L s-1");
  m["length"] = quantity(test.tested.length, "m");
  m["bore_resistance"] = quantity(test.local.value_or(std::nan("")), "K m W-1");
  m["computed_bore_resistance"] = quantity(test.computed, "K m W-1");
  m["least_effective"] = quantity(test.least, "K m W-1");
  return m;
}

void add_field(ordered_json& j, const job::Plan& plan) {
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

void add_cells(ordered_json& j, const job::Plan& plan) {
  j["radial_cells"] = plan.radial_cells;
  j["axial_cells"] = plan.axial_cells;
  j["cells"] = plan.cells;
  j["outer_radius"] = quantity(plan.outer_radius, "m");
  j["grid_depth"] = quantity(plan.grid_depth, "m");
}

void add_loads(ordered_json& j, const job::Plan& plan) {
  const auto duty = [&](const std::string& name, const job::LoadSummary& of) {
    j[name] = quantity(of.year, "J");
    j[name + "_first_year"] = quantity(of.first_year, "J");
    j[name + "_peak"] = quantity(of.peak, "W");
  };
  duty("heating", plan.heating);
  duty("hot_water", plan.hot_water);
  duty("cooling", plan.cooling);
  j["heat_to_ground"] = quantity(plan.heat_to_ground, "J");
}

ordered_json peak_month(const job::Plan& plan, const assembly::GroundHeat& heat) {
  ordered_json month = quantity(NAN, "month");
  if (heat.any()) month["value"] = plus_days(plan.start, heat.hour / 24).month;
  return month;
}

/// "2028-01-17 07:00", or null where no heat goes this way.
ordered_json peak_hour(const job::Plan& plan, const assembly::GroundHeat& heat) {
  return heat.any() ? ordered_json(iso_hour(plan.start, static_cast<double>(heat.hour))) : ordered_json(nullptr);
}

void add_ground_heat(ordered_json& j, const job::Plan& plan) {
  const assembly::GroundHeat &taken = plan.ground_heats.taken, &given = plan.ground_heats.given;
  const auto difference = [&](const assembly::GroundHeat& heat) {
    return quantity(heat.any() ? heat.difference : NAN, "K");
  };
  j["per_metre"] = {{"heating_peak", quantity(taken.peak, "W m-1")},
                    {"cooling_peak", quantity(given.peak, "W m-1")},
                    {"heating_year", quantity(taken.year / joules_per_kwh, "kWh m-1")},
                    {"cooling_year", quantity(given.year / joules_per_kwh, "kWh m-1")}};
  j["design_difference"] = {{"heating", difference(taken)}, {"cooling", difference(given)}};
  j["peak_month"] = {{"heating", peak_month(plan, taken)}, {"cooling", peak_month(plan, given)}};
  j["peak_hour"] = {{"heating", peak_hour(plan, taken)}, {"cooling", peak_hour(plan, given)}};
}

void add_flow(ordered_json& j, const job::Plan& plan) {
  const auto volume = [&](double flow) { return quantity(1e3 * flow, "L s-1"); };
  j["velocity"] = {{"full", quantity(plan.full_flow.velocity, "m s-1")},
                   {"least", quantity(plan.least_flow.velocity, "m s-1")}};
  j["bore_flow"] = {{"full", volume(plan.full_flow.volume)}, {"least", volume(plan.least_flow.volume)}};
  j["phases"] = ordered_json::array();
  for (const assembly::WorkPeriod& period : plan.periods) {
    j["phases"].push_back({{"start", iso_hour(plan.start, static_cast<double>(period.first))},
                           {"bores", period.bores},
                           {"length", quantity(period.length, "m")},
                           {"flow", volume(period.flow)},
                           {"bore_flow_least", volume(period.least_bore)},
                           {"bore_flow_most", volume(period.most_bore)}});
  }
}

ordered_json eft_error(const record::ErrorEstimate& error) {
  ordered_json e;
  e["long_name"] = error_meaning;
  e["total"] = quantity(error.total, "K");
  e["step"] = quantity(error.step, "K");
  e["grid"] = quantity(error.grid, "K");
  e["refresh"] = quantity(error.refresh, "K");
  return e;
}

}  // namespace

std::string plan_json(const job::Plan& plan, UnitSystem system) {
  ordered_json j;
  j["title"] = plan.title;
  j["start"] = iso(plan.start);
  j["years"] = plan.years;
  j["step"] = quantity(plan.step, "s");
  add_field(j, plan);
  add_cells(j, plan);
  add_loads(j, plan);
  add_ground_heat(j, plan);
  add_flow(j, plan);
  j["method"] = plan.screens ? "screening" : "march";
  if (!plan.screens) j["eft_error_estimate"] = eft_error(plan.eft_error);
  j["flow_cases"] = ordered_json::array();
  for (const auto& flow : plan.flow_cases) j["flow_cases"].push_back(flow_case(flow, system));
  if (plan.response_test) j["measured_resistance"] = measured(*plan.response_test);
  j["catalogue_values"] = ordered_json::array();
  for (const auto& values : plan.sources) {
    j["catalogue_values"].push_back({{"of", values.of}, {"entry", values.entry}, {"source", values.source}});
  }
  if (!plan.screens) j["expected_time"] = quantity(plan.expected_seconds, "s");
  j["expected_size"] = quantity(plan.expected_bytes, "byte");
  j["warnings"] = ordered_json::array();
  for (const auto& warning : plan.warnings) j["warnings"].push_back(warning.line());
  j["cautions"] = plan.cautions;
  return program::in_system(std::move(j), system).dump(2) + "\n";
}

}  // namespace stillground::app
