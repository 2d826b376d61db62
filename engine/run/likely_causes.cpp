#include "engine/run/likely_causes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "engine/field/layout.hpp"
#include "engine/run/ground_heat.hpp"

namespace stillground::run {

namespace {

constexpr double ice = 273.15;
constexpr double joules_per_kwh = 3.6e6;

// Usual, common practice, no source; of heat see run/ground_heat.
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
  if (whole < 1000) return fmt::format("{:.2g}", value);
  std::string text = std::to_string(whole);
  for (auto at = static_cast<int>(text.size()) - 3; at > 0; at -= 3) text.insert(static_cast<std::size_t>(at), ",");
  return text;
}

/// Heat one way, as often the usual as it is.
double add_peak(const GroundHeat& heat, double usual, std::vector<Cause>& causes) {
  const double times = heat.peak / usual;
  const std::string slip = likely_slip(heat.peak, usual);
  causes.push_back({times, fmt::format("heat of {} W per metre of bore (usual: up to {:g}): {}", rounded(heat.peak),
                                       usual, slip.empty() ? "are there bores enough?" : slip)});
  return times;
}

void loads_and_flow(const Assembly& assembly, std::vector<Cause>& causes) {
  const GroundHeats heats = ground_heats(assembly);
  const double taken = add_peak(heats.taken, usual_taken, causes), given = add_peak(heats.given, usual_given, causes);
  const double peak = std::max({1.0, taken, given});
  const double year = heats.given.year - heats.taken.year;
  causes.push_back({std::abs(year) / usual_year / peak,
                    fmt::format("{} kWh a year {} each metre of bore for good (usual: up to {:g})",
                                rounded(std::abs(year) / joules_per_kwh), year < 0 ? "out of" : "into",
                                usual_year / joules_per_kwh)});
  // More heat than the bores are for is no fault of the flow's.
  const double difference = std::max(heats.taken.difference, heats.given.difference);
  causes.push_back(
      {difference / usual_difference / peak,
       fmt::format(
           "flow of {:.3g} L/s a bore, whose fluid would change by {} K at the peak (usual: {:g} or so): is the "
           "flow in another unit, or that of a bore given as the field's?",
           1e3 * assembly.fluid.flow_per_bore / assembly.fluid.density, rounded(difference), usual_difference)});
}

void bores_and_ground(const Assembly& assembly, std::vector<Cause>& causes) {
  std::vector<double> per_layer;
  for (const auto& solid : assembly.problem.grid.solid) per_layer.push_back(solid.conductivity);
  const double conductivity = mean_over_bores(assembly.problem, per_layer);
  causes.push_back({usual_conductivity / conductivity,
                    fmt::format("ground of {:.2g} W/(m K) (usual: from {:g})", conductivity, usual_conductivity)});
  const double resistance = assembly.fluid.bore_resistance.value_or(0);
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

}  // namespace stillground::run
