#pragma once

#include <optional>
#include <vector>

#include "tools/results/ground.hpp"

namespace stillground::results {

/// Where the ground is cut: at a depth, or upright along a line of the plan.
struct Cut {
  std::optional<double> depth = {};  ///< [m]; none: upright
  PlanPoint from, to;                ///< of an upright cut [m]
};

/// The ground's temperature on a cut, at nodes of an upright grid.
struct Slice {
  Cut cut;
  double time = 0;                  ///< since the run's start [s]
  std::vector<double> x;            ///< along x, or from `from` towards `to` [m]
  std::vector<double> y;            ///< along y, or the depth [m]; rising
  std::vector<double> rise;         ///< [y][x] [K]
  std::vector<double> undisturbed;  ///< [y] [K]

  double temperature(std::size_t i, std::size_t j) const { return undisturbed[j] + rise[j * x.size() + i]; }
  /// Where a node is on the plan.
  PlanPoint place(std::size_t i, std::size_t j) const;
  double depth(std::size_t j) const { return cut.depth ? *cut.depth : y[j]; }
};

/// The nodes of a cut, without values: a level one reaches some way beyond the bores and the plot, an upright one from
/// the surface to below the deepest toe. `finest`: nodes along the longer side. Throws InputError for a depth outside
/// the grid's (above the surface, below its bottom) and for a line without length.
Slice empty_slice(const record::Header& header, const Cut& cut, int finest = 180);

/// Fills in the ground at an instant.
Slice slice_of(const record::Header& header, const GroundState& state, Slice slice);

}  // namespace stillground::results
