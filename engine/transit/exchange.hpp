#pragma once

#include <cstddef>
#include <vector>

#include "engine/bore/network.hpp"

namespace stillground::transit {

/// What passes between streams, nodes and ground in a slice of a bore while its fluid lies still for a step, exact in
/// time. Unknowns of a slice: its streams' temperatures, then the inner and outer node of each mode [K].
///
///   C_s T_s' = -sum_m gives_ms q_m,   q_m = (sum_s reads_ms T_s - inner_m)/R_inner
///   C_i inner_m' = q_m - (inner_m - outer_m)/R_middle
///   C_o outer_m' = (inner_m - outer_m)/R_middle - q_out
///   q_out = (outer_0 - E)/(R_outer + R_first) of mode 0,  outer_m/R_outer of the others
///
/// with the ground's temperature E at its first node, R_first beyond the wall, held over the step. A mode whose nodes
/// store nothing passes its heat at once.
struct Exchange {
  std::size_t unknowns = 0;  ///< n
  /// (n + 1) x (n + 1), row by row. Columns: the unknowns at the step's start, E. Rows: the unknowns at its end, mean
  /// heat to the ground over the step [W/m].
  std::vector<double> matrix;

  double at(std::size_t row, std::size_t column) const { return matrix[row * (unknowns + 1) + column]; }
};

/// `first_resistance`: R_first [K m/W], >= 0; `step` [s], > 0.
Exchange exchange_over(const bore::Network& network, double first_resistance, double step);

}  // namespace stillground::transit
