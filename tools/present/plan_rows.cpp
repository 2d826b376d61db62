#include "tools/present/plan_rows.hpp"

#include <cmath>
#include <cstddef>

namespace stillground::present {

namespace {

constexpr double same_step = 0.02;  ///< of its length

Point between(const Point& from, const Point& to) {
  return {to.x - from.x, to.y - from.y};
}

double length(const Point& step) {
  return std::hypot(step.x, step.y);
}

bool same(const Point& a, const Point& b) {
  return length(between(a, b)) <= same_step * length(a);
}

bool as_long(const Point& a, const Point& b) {
  return std::abs(length(a) - length(b)) <= same_step * length(a);
}

Point along(const Point& step, double sign) {
  return {sign * step.x / length(step), sign * step.y / length(step)};
}

}  // namespace

std::vector<std::optional<Point>> row_ends(const std::vector<Point>& points) {
  std::vector<std::optional<Point>> ways(points.size());
  std::vector<Point> steps;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) steps.push_back(between(points[i], points[i + 1]));
  std::optional<Point> closing;  // the step that closes a ring
  if (steps.size() > 1) {
    const Point last = between(points.back(), points.front());
    if (as_long(last, steps.front()) && as_long(last, steps.back())) closing = last;
  }
  for (std::size_t i = 0; i < points.size(); ++i) {
    const std::optional<Point> from = i > 0 ? steps[i - 1] : closing;
    const std::optional<Point> on = i < steps.size() ? steps[i] : closing;
    if (from && on && same(*from, *on)) continue;
    if (from && on && as_long(*from, *on)) {
      ways[i] = along(between(*from, *on), -1);  // on a ring, or at a corner: to the outer side
    } else if (from && (!on || length(*from) < length(*on))) {
      ways[i] = along(*from, 1);  // the shorter step belongs to the row
    } else {
      ways[i] = on ? along(*on, -1) : Point{0, 1};
    }
  }
  return ways;
}

}  // namespace stillground::present
