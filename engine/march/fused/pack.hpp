// The part of the kernels that all of them share, compiled once for each instruction set: STILLGROUND_SET its name and
// STILLGROUND_LANES the doubles in a register. All in a namespace of the set's own: nothing compiled with instructions
// that the machine may lack is shared with another set.
#pragma once

#include <utility>

#include "engine/march/fused/kernels.hpp"

namespace stillground::march::fused::STILLGROUND_SET {

constexpr std::size_t lanes = STILLGROUND_LANES;
using Pack = double __attribute__((vector_size(8 * STILLGROUND_LANES), may_alias));

inline Pack load(const double* p) {
  return *reinterpret_cast<const Pack*>(p);
}
inline void store(double* p, Pack v) {
  *reinterpret_cast<Pack*>(p) = v;
}

using Lanes = std::make_index_sequence<lanes>;

/// The layers `by` above those of a pack, or below: shifted, the gap filled from the pack before or after.
template <std::size_t by = 1>
inline Pack above(Pack before, Pack here) {
  return [&]<std::size_t... n>(std::index_sequence<n...>) {
    return __builtin_shufflevector(before, here, (lanes - by + n)...);
  }
  (Lanes{});
}
template <std::size_t by = 1>
inline Pack below(Pack here, Pack after) {
  return [&]<std::size_t... n>(std::index_sequence<n...>) {
    return __builtin_shufflevector(here, after, (by + n)...);
  }
  (Lanes{});
}

/// Nothing lies above the first pack of a row or below the last.
alignas(64) constexpr double nothing[lanes] = {};

/// N packs of layers, one below the other, that are taken through the rings side by side.
template <std::size_t N>
struct Packs {
  Pack of[N];
};

template <std::size_t N>
inline Packs<N> load_packs(const double* p) {
  Packs<N> result;
  for (std::size_t n = 0; n < N; ++n) result.of[n] = load(p + n * lanes);
  return result;
}

template <std::size_t N>
inline void store_packs(double* p, const Packs<N>& v) {
  for (std::size_t n = 0; n < N; ++n) store(p + n * lanes, v.of[n]);
}

}  // namespace stillground::march::fused::STILLGROUND_SET
