#include "engine/screen/packed_rows.hpp"

#include "engine/march/instruction_sets.hpp"

namespace stillground::screen {

namespace {

/// So many packs of every row, all sums in registers on one way through the rows.
template <std::size_t count>
[[gnu::always_inline]] inline void add_rows(const Pack* entries, std::size_t packs, std::size_t rows, double times,
                                            const double* factors, Pack* sum) {
  Wide sums[count] = {};
  for (std::size_t r = 0; r < rows; ++r) {
    for (std::size_t p = 0; p < count; ++p) sums[p] += wide(entries[r * packs + p]) * factors[r];
  }
  for (std::size_t p = 0; p < count; ++p) wide(sum[p]) += sums[p] * times;
}

STILLGROUND_CLONED
void add_all(const Pack* entries, std::size_t packs, std::size_t rows, double times, const double* factors, Pack* sum) {
  std::size_t p = 0;
  for (; p + 5 <= packs; p += 5) add_rows<5>(entries + p, packs, rows, times, factors, sum + p);
  for (; p < packs; ++p) add_rows<1>(entries + p, packs, rows, times, factors, sum + p);
}

}  // namespace

void PackedRows::add_transposed(double times, const double* factors, Pack* sum) const {
  add_all(entries.data(), packs, rows(), times, factors, sum);
}

}  // namespace stillground::screen
