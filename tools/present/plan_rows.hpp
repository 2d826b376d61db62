#pragma once

#include <optional>
#include <vector>

#include "tools/present/figure.hpp"

namespace stillground::present {

/// For each point that begins or ends a row the way out of the row, a unit vector; none for the points within one. A
/// row is a run of points at equal steps, in their order, whichever way it leads. A point where the way turns, as at a
/// corner and all along a ring, ends a row on the outer side of the turn; of a lone point the way leads up.
std::vector<std::optional<Point>> row_ends(const std::vector<Point>& points);

}  // namespace stillground::present
