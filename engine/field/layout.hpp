#pragma once

#include <vector>

#include "engine/model/field.hpp"

namespace stillground::field {

/// Every bore of the layout (a grid: row by row, x fastest; a fan: ray by ray, outwards). `top` and `depth` [m] are
/// those of a drawn layout's bores; surveyed positions bring their own.
std::vector<model::BoreSite> sites(const model::Layout& layout, double top, double depth);

/// Distance on the plan [m].
double distance(const model::BoreSite& a, const model::BoreSite& b);

/// Distance from each bore to its nearest neighbour [m]; empty for a lone bore.
std::vector<double> nearest_distances(const std::vector<model::BoreSite>& bores);

/// Radius of the smallest circle about the bores' centroid that holds them all [m].
double radius(const std::vector<model::BoreSite>& bores);

}  // namespace stillground::field
