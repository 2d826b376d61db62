#include "tools/present/plan_legend.hpp"

#include <fmt/format.h>

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

void draw_sign(Canvas& canvas, PlanSign sign, Point at, const std::string& hatch_id) {
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
    draw_bore(canvas, sign, at, sign_radius);
  }
}

}  // namespace

void draw_bore(Canvas& canvas, PlanSign sign, Point at, double radius) {
  const bool later = sign == PlanSign::later || sign == PlanSign::later_shut_off;
  const bool shut_off = sign == PlanSign::shut_off || sign == PlanSign::later_shut_off;
  canvas.circle(at, radius, {later ? "#ffffff" : bore_ink, bore_ink, 2.5});
  if (shut_off) draw_cross(canvas, at, 1.6 * radius);  // its arms look out of the mark
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
    draw_sign(canvas, entry.sign, {at.x + 14, y}, hatch_id);
    canvas.text({at.x + 40, y + 6}, entry.text, {17, ink, "start", false});
    y += line_height;
  }
}

double legend_height(std::size_t entries) {
  return line_height * static_cast<double>(entries);
}

}  // namespace stillground::present
