// First-order recurrences down or up the layers of a bore, a pack of them at a time: what runs along its M passes.
#pragma once

#include "engine/march/fused/pack.hpp"

namespace stillground::march::fused::STILLGROUND_SET {

/// `value` in every lane.
inline Pack everywhere(double value) {
  return value - Pack{};
}

/// value_p += sum_q F_pq from_q, factors F [M][M][z].
template <std::size_t M>
inline __attribute__((always_inline)) void add_product(const double* factors, std::size_t row, const Pack (&from)[M],
                                                       Pack (&value)[M]) {
  for (std::size_t p = 0; p < M; ++p) {
    for (std::size_t q = 0; q < M; ++q) value[p] += load(factors + (p * M + q) * row) * from[q];
  }
}

/// value_k += F_k value_{k-1} (downwards) or F_k value_{k+1}, layer after layer within a pack: by doubling, the
/// products of F over 1, 2, 4 layers being ready made (Hillis & Steele 1986, Communications of the ACM 29). What comes
/// into the pack from outside is not in it yet.
template <std::size_t M, bool downwards, std::size_t by = 1>
inline __attribute__((always_inline)) void scan(const double* factors, std::size_t row, Pack (&value)[M]) {
  if constexpr (by < lanes) {
    Pack shifted[M];
    for (std::size_t p = 0; p < M; ++p)
      shifted[p] = downwards ? above<by>(Pack{}, value[p]) : below<by>(value[p], Pack{});
    add_product<M>(factors, row, shifted, value);
    scan<M, downwards, 2 * by>(factors + M * M * row, row, value);
  }
}

}  // namespace stillground::march::fused::STILLGROUND_SET
