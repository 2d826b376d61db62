#pragma once

#include <string>

#include "engine/base/unit_system.hpp"

namespace stillground::results {

/// How a picture shows temperatures: on the Celsius or the Fahrenheit scale.
struct TemperatureScale {
  UnitSystem units = UnitSystem::si;

  /// The figure shown for a temperature [K].
  double operator()(double kelvin) const;

  /// "°C" or "°F".
  std::string unit() const;

  /// A temperature [K] as people write it, with all digits that it has: "2 °C", "35.6 °F".
  std::string plain(double kelvin) const;

  /// A temperature [K]: "12.5 °C".
  std::string text(double kelvin, int digits) const;

  /// A difference [K], with its sign if it is asked for: "0.57 K", "-1.03 °F".
  std::string difference(double kelvin, int digits, bool with_sign = false) const;
};

/// A sentence as pictures set it: "°C" and "°F" for "degC" and "degF".
std::string with_degree_signs(std::string sentence);

}  // namespace stillground::results
