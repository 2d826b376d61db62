#include "engine/loop/cop_curve.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stillground::loop {

namespace {

auto first_above(const std::vector<model::CopPoint>& points, double eft) {
  return std::upper_bound(points.begin(), points.end(), eft, [](double t, const auto& point) { return t < point.eft; });
}

}  // namespace

CopCurve::CopCurve(std::vector<model::CopPoint> points) : points_(std::move(points)) {}

double CopCurve::at(double eft) const {
  const auto above = first_above(points_, eft);
  if (above == points_.begin()) return points_.front().cop;
  if (above == points_.end()) return points_.back().cop;
  const auto& lower = *(above - 1);
  return std::lerp(lower.cop, above->cop, (eft - lower.eft) / (above->eft - lower.eft));
}

double CopCurve::slope(double eft) const {
  const auto above = first_above(points_, eft);
  if (above == points_.begin() || above == points_.end()) return 0;
  const auto& lower = *(above - 1);
  return (above->cop - lower.cop) / (above->eft - lower.eft);
}

}  // namespace stillground::loop
