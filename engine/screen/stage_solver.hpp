#pragma once

#include <cstddef>
#include <vector>

#include "engine/screen/circuit.hpp"
#include "engine/screen/packed_rows.hpp"

namespace stillground::screen {

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
