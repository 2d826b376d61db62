#pragma once

#include <cstddef>
#include <vector>

#include "engine/screen/circuit.hpp"
#include "engine/screen/pack.hpp"

namespace stillground::screen {

/// Rows of packs: [row][pack].
struct PackedRows {
  PackedRows() = default;
  PackedRows(std::size_t rows, std::size_t columns)
      : packs((columns + Pack::width - 1) / Pack::width), entries(rows * packs, Pack{}) {}

  double* row(std::size_t i) { return entries[i * packs].values; }
  const double* row(std::size_t i) const { return entries[i * packs].values; }

  std::size_t packs = 0;  ///< of a row
  std::vector<Pack> entries;
};

/// Solves (1 - kappa R) x = b for many right-hand sides side by side: factors L U without pivots, of which it keeps
/// what is not zero. A circuit's streams take and give in one direction and all else is diffusion, so that the diagonal
/// outweighs the rest of its row or all but (source of the condition: Golub & Van Loan 1996, 3.4.10 [from memory]).
class StageSolver {
 public:
  /// `rates` R [1/s], `kappa` [s] > 0.
  StageSolver(const RowMatrix& rates, double kappa);

  /// Overwrites b by x.
  void solve(PackedRows& columns) const;

 private:
  struct Entry {
    std::size_t column;
    double value;
  };

  std::vector<Entry> lower_, upper_;                // row after row
  std::vector<std::size_t> lower_end_, upper_end_;  // [row]
  std::vector<double> diagonal_;                    // reciprocals
};

}  // namespace stillground::screen
