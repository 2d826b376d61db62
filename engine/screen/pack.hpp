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

inline const Wide& wide(const Pack& pack) {
  return *reinterpret_cast<const Wide*>(&pack);
}

inline Wide& wide(Pack& pack) {
  return *reinterpret_cast<Wide*>(&pack);
}

/// How many packs hold so many numbers.
constexpr std::size_t packs_of(std::size_t numbers) {
  return (numbers + Pack::width - 1) / Pack::width;
}

/// sum_i a_i b_i over whole packs.
double dot(const Pack* a, const Pack* b, std::size_t packs);

}  // namespace stillground::screen
