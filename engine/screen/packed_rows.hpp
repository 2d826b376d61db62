#pragma once

#include <cstddef>
#include <vector>

#include "engine/screen/pack.hpp"

namespace stillground::screen {

/// Rows of packs: [row][pack].
struct PackedRows {
  PackedRows() = default;
  PackedRows(std::size_t rows, std::size_t columns) : packs(packs_of(columns)), entries(rows * packs, Pack{}) {}

  double* row(std::size_t i) { return entries[i * packs].values; }
  const double* row(std::size_t i) const { return entries[i * packs].values; }
  std::size_t rows() const { return packs == 0 ? 0 : entries.size() / packs; }

  /// sum_i += times sum_r factors_r rows_ri: `factors` [row], `sum` [pack].
  void add_transposed(double times, const double* factors, Pack* sum) const;

  std::size_t packs = 0;  ///< of a row
  std::vector<Pack> entries;
};

}  // namespace stillground::screen
