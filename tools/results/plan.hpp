#pragma once

#include <vector>

#include "engine/record/frames.hpp"

namespace stillground::results {

/// A point of the site's plan [m].
struct PlanPoint {
  double x = 0;
  double y = 0;
};

/// Corners of the convex hull, counter-clockwise, no three on a line (monotone chain: Andrew, Information Processing
/// Letters 9, 1979). Points on one line give its two ends, equal points one.
std::vector<PlanPoint> convex_hull(std::vector<PlanPoint> points);

/// All points within `margin` of a convex hull (its Minkowski sum with a disc): straight sides, round corners.
struct WidenedHull {
  std::vector<PlanPoint> corners;  ///< of the hull itself
  double margin = 0;               ///< [m], > 0

  double area() const;  ///< [m2], exact: hull + perimeter x margin + pi margin^2
};

/// The ground that a field stands in, seen from above: the hull of its bores widened by half the median distance to the
/// nearest neighbour, by 3 m for a lone bore. Throws InputError if half of the bores or more share their place.
WidenedHull ground_block(const std::vector<record::BoreRow>& bores);

/// Distance from each bore to its nearest neighbour [m]; empty for a lone bore.
std::vector<double> nearest_distances(const std::vector<record::BoreRow>& bores);

/// The points half way between each bore and its nearest neighbour, or neighbours where several are equally near
/// (within 1 %, the accuracy of surveyed places), each point once. A grid gives the middle of every side between two
/// bores.
std::vector<PlanPoint> mid_points(const std::vector<record::BoreRow>& bores);

}  // namespace stillground::results
