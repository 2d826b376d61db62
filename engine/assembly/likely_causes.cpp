#include "engine/assembly/likely_causes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>
#include <vector>

#include "engine/assembly/ground_heat.hpp"
#include "engine/assembly/shown.hpp"
#include "engine/field/layout.hpp"
#include "engine/units/display.hpp"

namespace stillground::assembly {

namespace {

constexpr double joules_per_kwh = 3.6e6;

// Usual, common practice, no source; of heat see ground_heat.cpp.
constexpr double usual_difference = 6;                // between entering and leaving fluid [K]
constexpr double usual_resistance = 0.2;              // of a bore [K m/W], at most
constexpr double usual_conductivity = 0.8;            // of the ground [W/(m K)], at least
constexpr double usual_spacing = 3;                   // [m], at least
constexpr double usual_cold = 268, usual_warm = 303;  // of undisturbed ground [K]

struct Cause {
  double times = 0;  ///< the usual
  std::string text;
};

/// Two digits and thousands apart: "2,300".
std::string rounded(double value) {
  if (!(value > 0)) return "0";
  const double digits = std::pow(10, std::floor(std::log10(value)) - 1);
  const auto whole = std::lround(std::round(value / digits) * digits);
  if (value < 10) return fmt::format("{:.2g}", value);
  std::string text = std::to_string(whole);
  for (auto at = static_cast<int>(text.size()) - 3; at > 0; at -= 3) text.insert(static_cast<std::size_t>(at), ",");
  return text;
}

/// The same of a figure kept in `units`, as the scenario's people are shown it: "0.38 L/s".
std::string rounded(const model::Scenario& scenario, double kept, std::string_view kind) {
  const units::Shown unit = units::shown_in(kind, scenario.units);
  return fmt::format("{} {}", rounded(unit(kept)), units::printed_unit(unit.units));
}

/// "2,300 W per metre of bore", "2,400 Btu/h per foot of bore": `kept` in W/m.
std::string per_length(const model::Scenario& scenario, double kept) {
  const bool us = scenario.units == UnitSystem::us;
  return fmt::format("{} {} of bore", rounded(units::shown_in("W m-1", scenario.units)(kept)),
                     us ? "Btu/h per foot" : "W per metre");
}

/// Heat one way, as often the usual as it is.
double add_peak(const model::Scenario& scenario, const GroundHeat& heat, double usual, std::vector<Cause>& causes) {
  const double times = heat.peak / usual;
  const std::string slip = likely_slip(heat.peak, usual);
  causes.push_back({times, fmt::format("heat of {} (usual: up to {}): {}", per_length(scenario, heat.peak),
                                       rounded(units::shown_in("W m-1", scenario.units)(usual)),
                                       slip.empty() ? "are there bores enough?" : slip)});
  return times;
}

void loads_and_flow(const Assembly& assembly, std::vector<Cause>& causes) {
  const GroundHeats heats = ground_heats(assembly);
  const model::Scenario& scenario = assembly.scenario;
  const double taken = add_peak(scenario, heats.taken, usual_taken, causes);
  const double given = add_peak(scenario, heats.given, usual_given, causes);
  const double peak = std::max({1.0, taken, given});
  const double year = heats.given.year - heats.taken.year;
  causes.push_back(
      {std::abs(year) / usual_year / peak,
       fmt::format("{} of bore a year {} the ground for good (usual: up to {})",
                   rounded(scenario, std::abs(year) / joules_per_kwh, "kWh m-1"), year < 0 ? "out of" : "into",
                   rounded(scenario, usual_year / joules_per_kwh, "kWh m-1"))});
  // More heat than the bores are for is no fault of the flow's.
  const double difference = std::max(heats.taken.difference, heats.given.difference);
  causes.push_back(
      {difference / usual_difference / peak,
       fmt::format("flow of {} a bore, whose fluid would change by {} at the peak (usual: {} or so): is the "
                   "flow in another unit, or that of a bore given as the field's?",
                   rounded(scenario, 1e3 * assembly.fluid.flow_per_bore / assembly.fluid.density, "L s-1"),
                   rounded(scenario, difference, "K"), rounded(scenario, usual_difference, "K"))});
}

void bores_and_ground(const Assembly& assembly, std::vector<Cause>& causes) {
  const model::Scenario& scenario = assembly.scenario;
  std::vector<double> per_layer;
  for (const auto& solid : assembly.problem.grid.solid) per_layer.push_back(solid.conductivity);
  const double conductivity = mean_over_bores(assembly.problem, per_layer);
  causes.push_back({usual_conductivity / conductivity,
                    fmt::format("ground of {} (usual: from {})", rounded(scenario, conductivity, "W m-1 K-1"),
                                rounded(scenario, usual_conductivity, "W m-1 K-1"))});
  const double resistance = assembly.fluid.bore_resistance.value_or(0);
  causes.push_back({resistance / usual_resistance,
                    fmt::format("a bore resistance of {} (usual: up to {})", shown(scenario, resistance, "K m W-1", 3),
                                shown(scenario, usual_resistance, "K m W-1", 3))});
  const double ground = assembly.fluid.reference;
  const double beyond = std::max(usual_cold - ground, ground - usual_warm);
  causes.push_back({beyond > 0 ? 2 + beyond / 10 : 0,
                    fmt::format("undisturbed ground of {} (usual: {} to {})", shown_temperature(scenario, ground),
                                shown_temperature(scenario, usual_cold), shown_temperature(scenario, usual_warm))});
  const auto nearest = field::nearest_distances(assembly.bores);
  if (nearest.empty()) return;
  const double apart = *std::min_element(nearest.begin(), nearest.end());
  causes.push_back(
      {usual_spacing / apart, fmt::format("bores {} apart (usual: from {})", shown(scenario, apart, "m", 2),
                                          shown(scenario, usual_spacing, "m", 0))});
}

}  // namespace

bool loads_beyond_usual(const Assembly& assembly) {
  const GroundHeats heats = ground_heats(assembly);
  return heats.taken.peak > usual_taken || heats.given.peak > usual_given;
}

std::string likely_causes(const Assembly& assembly) {
  std::vector<Cause> causes;
  loads_and_flow(assembly, causes);
  bores_and_ground(assembly, causes);
  std::erase_if(causes, [](const Cause& cause) { return !(cause.times > 1.2); });
  std::stable_sort(causes.begin(), causes.end(), [](const Cause& a, const Cause& b) { return a.times > b.times; });
  if (causes.empty()) {
    return "none of the scenario's figures is out of the usual: this may be a fault of the program, please report it "
           "with the scenario";
  }
  std::string text = causes.size() > 1 ? "likely causes, the likeliest first: " : "likely cause: ";
  for (std::size_t i = 0; i < causes.size(); ++i) text += (i > 0 ? "; " : "") + causes[i].text;
  return text;
}

}  // namespace stillground::assembly
