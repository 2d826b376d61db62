#include "engine/loop/cop_curve.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stillground::loop {

CopCurve::CopCurve(std::vector<model::CopPoint> points) : points_(std::move(points)) {}

CopCurve::Point CopCurve::look(double eft) const {
  // One after the other: curves have a handful of points.
  const auto above = std::find_if(points_.begin(), points_.end(), [&](const auto& point) { return eft < point.eft; });
  if (above == points_.begin()) return {points_.front().cop, 0};
  if (above == points_.end()) return {points_.back().cop, 0};
  const auto& lower = *(above - 1);
  const double width = above->eft - lower.eft;
  return {std::lerp(lower.cop, above->cop, (eft - lower.eft) / width), (above->cop - lower.cop) / width};
}

}  // namespace stillground::loop
