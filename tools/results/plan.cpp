#include "tools/results/plan.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "engine/base/errors.hpp"
#include "engine/field/layout.hpp"

namespace stillground::results {

namespace {

constexpr double lone_margin = 3;      ///< [m]
constexpr double equally_near = 1.01;  ///< of the nearest distance

/// > 0 if a, b, c turn left.
double turn(const PlanPoint& a, const PlanPoint& b, const PlanPoint& c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/// Corners of the half of the hull that lies to the right of the way through the sorted points, its last one left out.
template <class Iterator>
std::vector<PlanPoint> half_hull(Iterator first, Iterator last) {
  std::vector<PlanPoint> chain;
  for (; first != last; ++first) {
    while (chain.size() > 1 && turn(chain[chain.size() - 2], chain.back(), *first) <= 0) chain.pop_back();
    chain.push_back(*first);
  }
  chain.pop_back();
  return chain;
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t n = values.size();
  return (values[(n - 1) / 2] + values[n / 2]) / 2;
}

double distance(const record::BoreRow& a, const record::BoreRow& b) {
  return std::hypot(a.x - b.x, a.y - b.y);
}

}  // namespace

std::vector<PlanPoint> convex_hull(std::vector<PlanPoint> points) {
  const auto before = [](const PlanPoint& a, const PlanPoint& b) { return a.x < b.x || (a.x == b.x && a.y < b.y); };
  const auto same = [](const PlanPoint& a, const PlanPoint& b) { return a.x == b.x && a.y == b.y; };
  std::sort(points.begin(), points.end(), before);
  points.erase(std::unique(points.begin(), points.end(), same), points.end());
  if (points.size() < 2) return points;
  std::vector<PlanPoint> hull = half_hull(points.begin(), points.end());
  const std::vector<PlanPoint> upper = half_hull(points.rbegin(), points.rend());
  hull.insert(hull.end(), upper.begin(), upper.end());
  return hull;
}

double WidenedHull::area() const {
  double twice = 0;
  double perimeter = 0;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const PlanPoint& a = corners[i];
    const PlanPoint& b = corners[(i + 1) % corners.size()];
    twice += turn(corners.front(), a, b);  // not of the coordinates themselves: those of a national grid lose digits
    perimeter += std::hypot(b.x - a.x, b.y - a.y);
  }
  return twice / 2 + perimeter * margin + std::numbers::pi * margin * margin;
}

std::vector<double> nearest_distances(const std::vector<record::BoreRow>& bores) {
  std::vector<model::BoreSite> sites;
  for (const record::BoreRow& bore : bores) sites.push_back({bore.x, bore.y, bore.top, bore.depth, bore.start});
  return field::nearest_distances(sites);
}

WidenedHull ground_block(const std::vector<record::BoreRow>& bores) {
  std::vector<PlanPoint> points;
  for (const record::BoreRow& bore : bores) points.push_back({bore.x, bore.y});
  const double margin = bores.size() < 2 ? lone_margin : median(nearest_distances(bores)) / 2;
  if (!(margin > 0)) throw InputError("half of the bores or more share their place with another: no ground block");
  return {convex_hull(points), margin};
}

std::vector<PlanPoint> mid_points(const std::vector<record::BoreRow>& bores) {
  const std::vector<double> nearest = nearest_distances(bores);
  std::vector<PlanPoint> points;
  for (std::size_t a = 0; a < bores.size(); ++a) {
    for (std::size_t b = a + 1; b < bores.size(); ++b) {
      if (distance(bores[a], bores[b]) > equally_near * std::max(nearest[a], nearest[b])) continue;
      points.push_back({(bores[a].x + bores[b].x) / 2, (bores[a].y + bores[b].y) / 2});
    }
  }
  return points;
}

}  // namespace stillground::results
