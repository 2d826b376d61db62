#include "engine/simulation/plausible.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/assembly/likely_causes.hpp"
#include "engine/assembly/shown.hpp"
#include "engine/base/calendar.hpp"
#include "engine/base/temperature.hpp"
#include "engine/materials/fluid.hpp"
#include "engine/units/display.hpp"

namespace stillground::simulation {

namespace {

constexpr double coldest = zero_celsius - 60, warmest = zero_celsius + 130;
constexpr double beyond_data = 20;  // [K]
constexpr double closes = 1e-6;     // of the heat turned over

std::string when(const assembly::Assembly& assembly, long hour) {
  return iso_hour(assembly.scenario.run.start, static_cast<double>(hour));
}

/// "-396.1 degC"; a number that is none, or far from any, by its order.
std::string in_words(const model::Scenario& scenario, double kelvin) {
  if (!std::isfinite(kelvin)) return "no finite number";
  if (std::abs(kelvin) < 1e5) return assembly::shown_temperature(scenario, kelvin);
  const units::Shown unit = units::shown_in("degC", scenario.units);
  return fmt::format("{:.0e} {}", unit(kelvin - zero_celsius), unit.units);
}

}  // namespace

Plausible::Plausible(const assembly::Assembly& assembly) : assembly_(assembly) {
  const materials::ValidRange known = materials::valid_range(assembly.scenario.fluid);
  least_ = std::max(0.0, std::min(coldest, known.coldest - beyond_data));
  most_ = std::max(warmest, known.warmest + beyond_data);
}

void Plausible::walls(const WallExtremes& found, long hour) const {
  for (const WallExtremes::At& at : {found.coldest, found.warmest}) {
    if (can_be(at.temperature)) continue;
    const std::size_t bore = assembly_.groups.members[at.group].front();
    stop(hour - 1,
         fmt::format("the ground at the wall of bore {}, {} deep,", bore + 1,
                     assembly::shown(assembly_.scenario, assembly_.problem.grid.z[at.layer], "m", 0)),
         at.temperature);
  }
}

void Plausible::balance(const record::YearBalance& balance, double turned_over, int year) const {
  // A field that rests is measured by a kelvin of what its bores hold.
  const bore::Capacities& held = assembly_.fluid.capacities;
  double kelvin = held.grout;
  for (const double stream : held.stream) kelvin += stream;
  double metres = 0;
  for (const auto& bore : assembly_.bores) metres += bore.depth;
  const double open = std::abs(balance.residual), least = kelvin * metres;
  if (open <= closes * std::max(turned_over, least)) return;
  throw NumericsError(fmt::format(
      "stopped at {}: in run-year {} the heat balance does not close, {:.3g} J of the {:.3g} J turned over are missing "
      "(allowed: 1e-6 of them); no result is written; {}",
      when(assembly_, year * hours_per_year), year, balance.residual, turned_over, assembly::likely_causes(assembly_)));
}

void Plausible::gave_up(const NumericsError& error, long hour) const {
  throw NumericsError(fmt::format("stopped at {}: {}; no result is written; {}", when(assembly_, hour), error.what(),
                                  assembly::likely_causes(assembly_)));
}

void Plausible::stop(long hour, const std::string& what, double temperature) const {
  const model::Scenario& scenario = assembly_.scenario;
  const materials::ValidRange known = materials::valid_range(scenario.fluid);
  throw NumericsError(fmt::format(
      "stopped at {}: {} came to {}, beyond {} to {}, within which a result is believed (the fluid's data: "
      "{} to {}); no "
      "result is written; {}",
      when(assembly_, hour), what, in_words(scenario, temperature),
      assembly::shown(scenario, least_ - zero_celsius, "degC", 0),
      assembly::shown(scenario, most_ - zero_celsius, "degC", 0), assembly::shown_temperature(scenario, known.coldest),
      assembly::shown_temperature(scenario, known.warmest), assembly::likely_causes(assembly_)));
}

}  // namespace stillground::simulation
