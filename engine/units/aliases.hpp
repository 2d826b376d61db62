#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stillground::units {

/// How we read a unit that UDUNITS-2 lacks, reads otherwise, or that means two things.
struct Alias {
  std::string_view token;
  std::string_view meaning;  ///< for UDUNITS-2; empty: refused
  std::string_view advice;   ///< why and what to write instead, where it is refused
};

/// The alias of a token, if it has one; letters as written.
const Alias* find_alias(std::string_view token);

/// A temperature scale: kelvin = scale * value + offset. A difference has no offset.
struct TemperatureScale {
  double scale = 1;
  double offset = 0;
};

/// The scale that a token names ("degF", "F", "K", "celsius"), none if it is no temperature.
std::optional<TemperatureScale> find_temperature_scale(std::string_view token);

/// Well-known units near an unknown one, for "did you mean"; the same letters in another case come first.
std::optional<std::string> nearest_unit(const std::string& token);

}  // namespace stillground::units
