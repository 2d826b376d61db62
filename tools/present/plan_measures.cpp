#include "tools/present/plan_measures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <utility>

#include "engine/units/display.hpp"
#include "tools/present/labels.hpp"
#include "tools/present/palette.hpp"

namespace stillground::present {

namespace {

constexpr double text_size = 15;
constexpr double beside = 26;   ///< from a pair of bores to its measure [px]
constexpr double outside = 46;  ///< from everything drawn to the field's measures [px]
constexpr double gap = 36;      ///< between a bore and the line from a measure to it: its number may stand there [px]
constexpr double same = 1.001;  ///< as near as the nearest
constexpr double longest_bar = 150;  ///< [px]
constexpr double foot = 0.3048;      ///< [m]
constexpr std::size_t most_tried = 400;

std::string length_text(double metres, UnitSystem system) {
  return units::text(metres, "m", 2, system);
}

PlanBox box_around(const Point& at, double wide, double high) {
  return {at.x - wide / 2, at.y - high / 2, at.x + wide / 2, at.y + high / 2};
}

/// Small boxes along a line.
void add_line(const Point& a, const Point& b, std::vector<PlanBox>& boxes) {
  constexpr double step = 6;
  const int parts = static_cast<int>(std::ceil(std::max(apart(a, b), 1.0) / step));
  for (int i = 0; i <= parts; ++i) {
    const double part = static_cast<double>(i) / parts;
    boxes.push_back(box_around({a.x + part * (b.x - a.x), a.y + part * (b.y - a.y)}, step, step));
  }
}

/// The thin lines from what is measured to the measure.
std::vector<std::pair<Point, Point>> leads_of(const PlanMeasure& measure) {
  std::vector<std::pair<Point, Point>> leads;
  for (const auto& [point, at] : {std::pair{measure.from, measure.from_at}, std::pair{measure.to, measure.to_at}}) {
    const double length = apart(point, at);
    const double from = length > beside + 1 ? gap : 0;
    if (length <= from) continue;
    const Point way{(at.x - point.x) / length, (at.y - point.y) / length};
    leads.push_back({{point.x + from * way.x, point.y + from * way.y}, {at.x + 5 * way.x, at.y + 5 * way.y}});
  }
  return leads;
}

/// The measure of two points of the picture, pushed off them by `by`, its text a line farther on.
PlanMeasure pushed(const Point& from, const Point& to, const Point& by, const std::string& text) {
  const double far = std::hypot(by.x, by.y);
  const Point way{by.x / far, by.y / far};
  const Point from_at{from.x + by.x, from.y + by.y}, to_at{to.x + by.x, to.y + by.y};
  // Beside an upright line the text needs half its width, above a level one half its height.
  const double room = 5 + std::abs(way.x) * text_width(text, text_size) / 2 + std::abs(way.y) * text_size / 2;
  return {from,  to,   from_at,
          to_at, text, {(from_at.x + to_at.x) / 2 + room * way.x, (from_at.y + to_at.y) / 2 + room * way.y}};
}

struct Pair {
  Point a, b;  ///< on the picture
  Point out;   ///< to the side on which its measure would stand, unit vector
};

/// Both sides of every nearest pair, the uppermost first.
std::vector<Pair> nearest_pairs(const std::vector<Point>& points, double nearest, const PlanScale& scale) {
  std::vector<Pair> pairs;
  for (std::size_t i = 0; i < points.size(); ++i) {
    for (std::size_t j = i + 1; j < points.size(); ++j) {
      if (apart(points[i], points[j]) > same * nearest) continue;
      const Point a = scale.at(points[i]), b = scale.at(points[j]);
      const double length = std::max(apart(a, b), 1e-6);
      const Point out{(b.y - a.y) / length, (a.x - b.x) / length};
      pairs.push_back({a, b, out});
      pairs.push_back({a, b, {-out.x, -out.y}});
    }
  }
  const auto height = [](const Pair& pair) { return std::lround((pair.a.y + pair.b.y) / 2 + beside * pair.out.y); };
  std::stable_sort(pairs.begin(), pairs.end(), [&](const Pair& p, const Pair& q) { return height(p) < height(q); });
  return pairs;
}

/// That of the first pair beside which no bore stands in the way.
std::optional<PlanMeasure> nearest_measure(const std::vector<Point>& points, const PlanScale& scale, double radius,
                                           UnitSystem system) {
  const double nearest = nearest_distance(points);
  const std::string text = length_text(nearest, system);
  const auto pairs = nearest_pairs(points, nearest, scale);
  for (std::size_t i = 0; i < std::min(pairs.size(), most_tried); ++i) {
    const auto& [a, b, out] = pairs[i];
    const PlanMeasure measure = pushed(a, b, {beside * out.x, beside * out.y}, text);
    const auto boxes = boxes_of(measure);
    const auto in_the_way = [&](const Point& point) {
      const Point at = scale.at(point);
      if (apart(at, a) < 1e-6 || apart(at, b) < 1e-6) return false;
      const PlanBox mark = box_around(at, 2 * radius + 4, 2 * radius + 4);
      return std::any_of(boxes.begin(), boxes.end(), [&](const PlanBox& box) { return box.meets(mark); });
    };
    if (std::none_of(points.begin(), points.end(), in_the_way)) return measure;
  }
  return std::nullopt;
}

/// The point farthest in a direction, and of those that are (within a hand's breadth) the one nearest to a side.
template <class Far, class Near>
Point outermost(const std::vector<Point>& points, Far&& far, Near&& near) {
  return *std::max_element(points.begin(), points.end(), [&](const Point& a, const Point& b) {
    const long p = std::lround(10 * far(a)), q = std::lround(10 * far(b));
    return p != q ? p < q : near(a) < near(b);
  });
}

/// The largest of 1, 2, 5, 10, 20 ... that is no longer than `most`.
double round_length(double most) {
  const double power = std::pow(10, std::floor(std::log10(most)));
  for (const double factor : {5.0, 2.0}) {
    if (factor * power <= most) return factor * power;
  }
  return power;
}

void draw_bar(Canvas& canvas, Point at, double length, const std::string& text) {
  const double right = at.x + length;
  canvas.line(at, {right, at.y}, {ink, 3, ""});
  canvas.line({at.x, at.y - 6}, {at.x, at.y + 6}, {ink, 2, ""});
  canvas.line({right, at.y - 6}, {right, at.y + 6}, {ink, 2, ""});
  canvas.text({right + 12, at.y + 6}, text, {17, ink, "start", false});
}

}  // namespace

std::vector<PlanMeasure> measures_of(const std::vector<Point>& points, const PlanScale& scale, double radius,
                                     const PlanExtent& extent, UnitSystem system) {
  std::vector<PlanMeasure> measures;
  if (points.size() < 2) return measures;
  if (auto nearest = nearest_measure(points, scale, radius, system)) measures.push_back(*nearest);
  const auto x = [](const Point& p) { return p.x; };
  const auto y = [](const Point& p) { return p.y; };
  const auto west = [](const Point& p) { return -p.x; };
  const auto south = [](const Point& p) { return -p.y; };
  const double more_than_a_pair = 1.1 * nearest_distance(points);
  const auto add = [&](const Point& from, const Point& to, const Point& from_edge, const Point& to_edge,
                       const Point& by, double metres) {
    if (metres <= more_than_a_pair) return;
    measures.push_back(pushed(from_edge, to_edge, by, length_text(metres, system)));
    measures.back().from = scale.at(from);
    measures.back().to = scale.at(to);
  };
  const Point left = outermost(points, west, south), right = outermost(points, x, south);
  add(left, right, scale.at({left.x, extent.y.low()}), scale.at({right.x, extent.y.low()}), {0, outside},
      right.x - left.x);
  const Point low = outermost(points, south, west), high = outermost(points, y, west);
  add(low, high, scale.at({extent.x.low(), low.y}), scale.at({extent.x.low(), high.y}), {-outside, 0}, high.y - low.y);
  return measures;
}

void draw_measure(Canvas& canvas, const PlanMeasure& measure) {
  const Stroke thin{quiet_ink, 1, ""};
  for (const auto& [from, to] : leads_of(measure)) canvas.line(from, to, {quiet_ink, 1, "2 3"});
  for (const Point& at : {measure.from_at, measure.to_at}) {
    canvas.line({at.x - 5, at.y + 5}, {at.x + 5, at.y - 5}, {quiet_ink, 2, ""});
  }
  canvas.line(measure.from_at, measure.to_at, thin);
  const PlanBox behind = box_around(measure.text_at, text_width(measure.text, text_size), text_size);
  // Whole pixels: a coordinate read back from a table differs in its last digit, and the drawing must not.
  canvas.box({std::round(behind.left), std::round(behind.top)}, {std::round(behind.right), std::round(behind.bottom)},
             "#ffffff", {"none", 0, ""});
  canvas.text({measure.text_at.x, measure.text_at.y + 0.35 * text_size}, measure.text,
              {text_size, quiet_ink, "middle", false});
}

std::vector<PlanBox> boxes_of(const PlanMeasure& measure) {
  std::vector<PlanBox> boxes{box_around(measure.text_at, text_width(measure.text, text_size), text_size)};
  add_line(measure.from_at, measure.to_at, boxes);
  for (const auto& [from, to] : leads_of(measure)) add_line(from, to, boxes);
  return boxes;
}

void draw_scale_bars(Canvas& canvas, const PlanScale& scale, Point at) {
  const double metres = round_length(longest_bar / scale.per_metre);
  const double feet = round_length(longest_bar / scale.per_metre / foot);
  draw_bar(canvas, at, metres * scale.per_metre, fmt::format("{:g} m", metres));
  draw_bar(canvas, {at.x, at.y + 26}, feet * foot * scale.per_metre, fmt::format("{:g} ft", feet));
}

double nearest_distance(const std::vector<Point>& points) {
  double nearest = HUGE_VAL;
  for (std::size_t i = 0; i < points.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) nearest = std::min(nearest, apart(points[i], points[j]));
  }
  return std::isfinite(nearest) ? nearest : 0;
}

}  // namespace stillground::present
