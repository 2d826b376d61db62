#pragma once

#include <span>
#include <vector>

#include "tools/present/figure.hpp"

namespace stillground::present {

/// Values at the nodes of an upright grid, [y][x]; x and y rise.
struct Field {
  std::span<const double> x, y, values;
};

/// A closed line about ground at or above a level, which lies at its left.
struct Loop {
  std::vector<Point> points;
  std::vector<bool> on_edge;  ///< whether the piece from a point to the next runs along the grid's edge
};

/// All loops about what is at or above a level: marching squares (Lorensen & Cline, Computer Graphics 21, 1987, in two
/// dimensions), straight between nodes, saddles parted by the cell's mean.
std::vector<Loop> loops_above(const Field& field, double level);

/// The lines of a level alone, without what runs along the edge; a closed one has its first point again at its end.
std::vector<std::vector<Point>> level_lines(const std::vector<Loop>& loops);

}  // namespace stillground::present
