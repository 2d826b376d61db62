#pragma once

#include <span>
#include <vector>

#include "engine/ground/grid.hpp"
#include "engine/march/problem.hpp"

namespace stillground::response {

/// Pieces of a bore's wall lie one below the other, each a part of its depth, the same parts in every bore whatever its
/// depth. `parts` add up to 1.

/// Metres of one of the group's bores in each layer: [piece][z].
std::vector<std::vector<double>> metres_of_pieces(const march::Group& group, const ground::Grid& grid,
                                                  std::span<const double> parts);

/// What makes a per-layer quantity's mean over all the field's metres of each piece: [piece][z], each sums to 1.
std::vector<std::vector<double>> mean_over_pieces(const march::Problem& problem, std::span<const double> parts);

}  // namespace stillground::response
