#pragma once

#include <string>
#include <string_view>

#include "engine/base/energy.hpp"
#include "engine/base/temperature.hpp"
#include "engine/units/display.hpp"

namespace stillground::app {

inline constexpr double joules_per_mwh = 1e3 * joules_per_kwh;

/// What is numerical in an hour's EFT, and what is not: the estimate's meaning, in words.
inline constexpr std::string_view error_meaning =
    "largest error of an hour's EFT by time step, grid and refresh interval alone; the errors of the model and of what "
    "the scenario gives come on top";

/// A plan's figures as text in one system of units.
struct Figures {
  UnitSystem system = UnitSystem::si;

  std::string of(double kept, std::string_view units, int digits) const {
    return units::text(kept, units, digits, system);
  }
  std::string temperature(double kelvin) const { return of(kelvin - zero_celsius, "degC", 1); }
  std::string difference(double kelvin, int digits) const { return of(kelvin, "K", digits); }
  std::string length(double metres, int digits) const { return of(metres, "m", digits); }
  std::string flow(double volume) const { return of(1e3 * volume, "L s-1", 2); }
  std::string velocity(double value) const { return of(value, "m s-1", 2); }
  std::string power(double watts) const { return of(watts / 1e3, "kW", 1); }
  std::string energy(double joules) const {
    return of(joules / joules_per_mwh, "MWh", system == UnitSystem::us ? 0 : 1);
  }

  /// The name of what `units` is shown in.
  std::string unit(std::string_view units) const {
    return std::string(units::printed_unit(units::shown_in(units, system).units));
  }
};

}  // namespace stillground::app
