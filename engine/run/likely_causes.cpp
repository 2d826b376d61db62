#include "engine/run/likely_causes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "engine/field/layout.hpp"
#include "engine/loop/flow_rule.hpp"
#include "engine/run/ground_heat.hpp"

namespace stillground::run {

namespace {

constexpr double ice = 273.15;
constexpr double joules_per_kwh = 3.6e6;

// Usual, common practice, no source.
constexpr double usual_peak = std::max(usual_taken, usual_given);  // [W/m] of bore, either way
constexpr double usual_left_over = usual_year / joules_per_kwh;    // [kWh/m] a year, one way more than the other
constexpr double usual_difference = 6;                             // between entering and leaving fluid [K]
constexpr double usual_resistance = 0.2;                           // of a bore [K m/W], at most
constexpr double usual_conductivity = 0.8;                         // of the ground [W/(m K)], at least
constexpr double usual_spacing = 3;                                // [m], at least
constexpr double usual_cold = 268, usual_warm = 303;               // of undisturbed ground [K]

struct Cause {
  double times = 0;  ///< the usual
  std::string text;
};

/// What the loads ask of the ground at the undisturbed ground's temperature.
struct Asked {
  double peak = 0;        ///< [W/m] of bore
  double one_sided = 0;   ///< [kWh/m] a year, positive into the ground
  double difference = 0;  ///< of the fluid in the hour in which it is largest [K]
};

Asked asked_of_ground(const Assembly& assembly) {
  double metres = 0, flow = 0, sum = 0;
  for (const auto& bore : assembly.bores) metres += bore.depth;
  for (std::size_t g = 0; g < assembly.groups.size(); ++g) {
    if (assembly.problem.groups[g].returns) flow += assembly.problem.groups[g].members;
  }
  const double heat_rate = flow * assembly.fluid.flow_per_bore * assembly.fluid.heat_capacity;
  const double largest = std::max(assembly.loads.peak(), 1e-9);
  Asked asked;
  for (long hour = 0; hour < assembly.hours(); ++hour) {
    const loop::Demand demand = assembly.loads.hour(hour);
    if (!demand.any()) continue;
    const double heat = loop::exchange(demand, assembly.problem.pumps, assembly.fluid.reference).to_ground;
    const double part = loop::flow_part(assembly.scenario.flow, demand.size() / largest);
    sum += heat * seconds_per_hour;
    asked.peak = std::max(asked.peak, std::abs(heat) / metres);
    asked.difference = std::max(asked.difference, std::abs(heat) / (part * heat_rate));
  }
  asked.one_sided = sum / (joules_per_kwh * metres * assembly.scenario.run.years);
  return asked;
}

/// Two digits and thousands apart: "2,300".
std::string rounded(double value) {
  const double digits = std::pow(10, std::floor(std::log10(value)) - 1);
  const auto whole = std::lround(std::round(value / digits) * digits);
  if (whole < 1000) return fmt::format("{:.2g}", value);
  std::string text = std::to_string(whole);
  for (auto at = static_cast<int>(text.size()) - 3; at > 0; at -= 3) text.insert(static_cast<std::size_t>(at), ",");
  return text;
}

void loads_and_flow(const Assembly& assembly, std::vector<Cause>& causes) {
  const Asked asked = asked_of_ground(assembly);
  const double peak = asked.peak / usual_peak;
  causes.push_back(
      {peak, fmt::format("heat of {} W per metre of bore (usual: up to {:g}): {}", rounded(asked.peak), usual_peak,
                         peak > 10 ? "are the loads in W under a head that says kW, or bores left out?"
                                   : "are there bores enough?")});
  const double year = std::abs(asked.one_sided) / usual_left_over;
  causes.push_back(
      {year / std::max(1.0, peak),
       fmt::format("{} kWh a year {} each metre of bore for good (usual: up to {:g})",
                   rounded(std::abs(asked.one_sided)), asked.one_sided < 0 ? "out of" : "into", usual_left_over)});
  // More heat than the bores are for is no fault of the flow's.
  const double difference = asked.difference / usual_difference / std::max(1.0, peak);
  causes.push_back(
      {difference, fmt::format("flow of {:.3g} L/s a bore, whose fluid would change by {} K at the peak (usual: {:g} "
                               "or so): is the flow in another unit, or that of a bore given as the field's?",
                               1e3 * assembly.fluid.flow_per_bore / assembly.fluid.density, rounded(asked.difference),
                               usual_difference)});
}

void bores_and_ground(const Assembly& assembly, std::vector<Cause>& causes) {
  std::vector<double> per_layer;
  for (const auto& solid : assembly.problem.grid.solid) per_layer.push_back(solid.conductivity);
  const double conductivity = mean_over_bores(assembly.problem, per_layer);
  causes.push_back({usual_conductivity / conductivity,
                    fmt::format("ground of {:.2g} W/(m K) (usual: from {:g})", conductivity, usual_conductivity)});
  const double resistance = assembly.scenario.bore.resistance.value_or(0);
  causes.push_back({resistance / usual_resistance,
                    fmt::format("a bore resistance of {:g} K m/W (usual: up to {:g})", resistance, usual_resistance)});
  const double ground = assembly.fluid.reference;
  const double beyond = std::max(usual_cold - ground, ground - usual_warm);
  causes.push_back(
      {beyond > 0 ? 2 + beyond / 10 : 0, fmt::format("undisturbed ground of {:.0f} degC (usual: {:.0f} to {:.0f})",
                                                     ground - ice, usual_cold - ice, usual_warm - ice)});
  const auto nearest = field::nearest_distances(assembly.bores);
  if (nearest.empty()) return;
  const double apart = *std::min_element(nearest.begin(), nearest.end());
  causes.push_back(
      {usual_spacing / apart, fmt::format("bores {:.3g} m apart (usual: from {:g} m)", apart, usual_spacing)});
}

}  // namespace

bool loads_beyond_usual(const Assembly& assembly) {
  return asked_of_ground(assembly).peak > usual_peak;
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

}  // namespace stillground::run
