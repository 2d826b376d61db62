#include "tools/present/plan_legend.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/present/palette.hpp"

namespace stillground::present {

namespace {

constexpr double line_height = 26;
constexpr double sign_radius = 6;

void draw_cross(Canvas& canvas, Point at, double reach) {
  for (const double side : {-1.0, 1.0}) {
    const Point from{at.x - reach, at.y - side * reach}, to{at.x + reach, at.y + side * reach};
    canvas.line(from, to, {ink, 2.5, ""});
  }
}

/// Corners of a hollow mark as large as a circle of `radius`; a circle has none.
std::vector<Point> corners_of(int phase, Point at, double radius) {
  const auto corner = [&](double x, double y) { return Point{at.x + radius * x, at.y + radius * y}; };
  switch (std::min(phase, last_phase)) {
    case 2:
      return {corner(-0.9, -0.9), corner(0.9, -0.9), corner(0.9, 0.9), corner(-0.9, 0.9)};
    case 3:
      return {corner(0, -1.3), corner(1.3, 0), corner(0, 1.3), corner(-1.3, 0)};
    case last_phase:
      return {corner(0, -1.3), corner(1.2, 0.9), corner(-1.2, 0.9)};
    default:
      return {};
  }
}

void draw_sign(Canvas& canvas, const LegendEntry& entry, Point at, const std::string& hatch_id) {
  const PlanSign sign = entry.sign;
  if (sign == PlanSign::link) {
    draw_link(canvas, {at.x - 14, at.y}, {at.x + 14, at.y});
  } else if (sign == PlanSign::chamber) {
    draw_chamber(canvas, at);
  } else if (sign == PlanSign::kept_clear) {
    canvas.box({at.x - 14, at.y - 9}, {at.x + 14, at.y + 9}, fmt::format("url(#{})", hatch_id),
               {kept_clear_ink, 1.5, ""});
  } else if (sign == PlanSign::setback) {
    canvas.box({at.x - 14, at.y - 9}, {at.x + 14, at.y + 9}, setback_fill, {outline_ink, 1, "4 3"});
  } else {
    draw_bore(canvas, {entry.phase, sign == PlanSign::shut_off}, at, sign_radius);
  }
}

}  // namespace

void draw_bore(Canvas& canvas, const BoreSign& sign, Point at, double radius) {
  const Stroke edge{bore_ink, 2.5, ""};
  if (const auto corners = corners_of(sign.phase, at, radius); !corners.empty()) {
    canvas.polygon(corners, "#ffffff", edge);
  } else {
    canvas.circle(at, radius, {sign.phase > 0 ? "#ffffff" : bore_ink, edge.colour, edge.width});
  }
  if (sign.shut_off) draw_cross(canvas, at, 1.6 * radius);  // its arms look out of the mark
}

void draw_link(Canvas& canvas, Point from, Point to) {
  const Stroke stroke{ink, 2, ""};
  canvas.line(from, to, stroke);
  const double dx = to.x - from.x, dy = to.y - from.y, length = std::hypot(dx, dy);
  if (length < 1) return;
  const Point u{dx / length, dy / length}, tip{(from.x + to.x) / 2 + 4 * u.x, (from.y + to.y) / 2 + 4 * u.y};
  for (const double side : {-1.0, 1.0}) {
    canvas.line({tip.x - 9 * u.x - side * 6 * u.y, tip.y - 9 * u.y + side * 6 * u.x}, tip, stroke);
  }
}

void draw_chamber(Canvas& canvas, Point at) {
  canvas.box({at.x - 9, at.y - 9}, {at.x + 9, at.y + 9}, "#ffffff", {ink, 2, ""});
}

void draw_legend(Canvas& canvas, const std::vector<LegendEntry>& entries, Point at, const std::string& hatch_id) {
  double y = at.y + line_height / 2;
  for (const LegendEntry& entry : entries) {
    draw_sign(canvas, entry, {at.x + 14, y}, hatch_id);
    canvas.text({at.x + 40, y + 6}, entry.text, {17, ink, "start", false});
    y += line_height;
  }
}

double legend_height(std::size_t entries) {
  return line_height * static_cast<double>(entries);
}

}  // namespace stillground::present
