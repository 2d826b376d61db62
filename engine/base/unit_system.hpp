#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace stillground {

/// In which units people are shown figures. Whatever is computed, stored or exchanged between programs stays SI.
enum class UnitSystem { si, us };

inline constexpr std::array<std::string_view, 2> unit_system_words = {"si", "us"};

constexpr std::string_view word_of(UnitSystem system) {
  return unit_system_words[system == UnitSystem::us ? 1 : 0];
}

/// The system that a word names; none if it is neither "si" nor "us".
constexpr std::optional<UnitSystem> unit_system(std::string_view word) {
  for (const UnitSystem system : {UnitSystem::si, UnitSystem::us}) {
    if (word == word_of(system)) return system;
  }
  return std::nullopt;
}

}  // namespace stillground
