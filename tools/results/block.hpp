#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "engine/record/frames.hpp"
#include "tools/results/plan.hpp"

/// Means of the ground temperature by superposition: the rise at a point is the sum of the bores' own rises at its
/// distance from each, so the mean over any set of points is a weighted sum of the recorded [group][z][r] rises, with
/// weights that depend on the layout only.
namespace stillground::results {

/// [group][r], r fastest: the weight of each radial cell of each group.
struct PlanWeights {
  std::size_t groups = 0;
  std::size_t cells = 0;
  std::vector<double> values;
};

/// Weights of the mean over the widened hull. Exact for the interpolation of field::radial_weights up to a quadrature
/// error below 1e-6 of the mean: the area integral about each bore becomes one over the hull's edge (divergence
/// theorem), taken by four-point Gauss rules on pieces of at most half a margin; radially four points between two
/// nodes. A point quadrature would need a fine mesh about every bore, where the rise is steep.
PlanWeights block_weights(const WidenedHull& block, const record::Header& header);

/// Weights of the mean over single points, such as the mid-points between bores.
PlanWeights point_weights(const std::vector<PlanPoint>& points, const record::Header& header);

/// The share of each layer in the mean from `top` to `toe` [m]: its overlap, the sum 1. `faces`: of the layers, rising.
std::vector<double> layer_weights(std::span<const double> faces, double top, double toe);

/// Sum over groups, layers and cells of plan x layer x rise. `rise`: [group][z][r], r fastest [K].
double weighted_mean(std::span<const float> rise, const PlanWeights& plan, std::span<const double> layers);

}  // namespace stillground::results
