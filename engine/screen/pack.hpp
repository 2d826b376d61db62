#pragma once

#include <cstddef>

namespace stillground::screen {

/// Eight numbers side by side.
struct alignas(64) Pack {
  static constexpr std::size_t width = 8;
  double values[width];
};

/// A pack as one vector of the compiler's.
using Wide = double __attribute__((vector_size(sizeof(Pack)), aligned(alignof(Pack))));

}  // namespace stillground::screen
