#pragma once

#include <cstddef>

namespace stillground::screen {

/// Eight numbers side by side.
struct alignas(64) Pack {
  static constexpr std::size_t width = 8;
  double values[width];
};

}  // namespace stillground::screen
