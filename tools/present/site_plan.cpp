#include "tools/present/site_plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/present/axis.hpp"
#include "tools/present/canvas.hpp"
#include "tools/present/labels.hpp"
#include "tools/present/palette.hpp"

namespace stillground::present {

namespace {

constexpr double picture_width = 900;
constexpr double margin = 60;
constexpr double most_drawn = 780;  ///< height and width of the drawn site

/// From metres to the picture.
struct Scale {
  double x0 = 0, y1 = 0;  ///< left and upper edge [m]
  double per_metre = 1;
  double top = 0;

  Point at(const Point& p) const { return {margin + (p.x - x0) * per_metre, top + (y1 - p.y) * per_metre}; }
};

struct Extent {
  Range x, y;

  void add(const Point& p) {
    x.add(p.x);
    y.add(p.y);
  }
};

Extent extent_of(const SitePlan& plan) {
  Extent extent;
  for (const PlanBore& bore : plan.bores) extent.add(bore.at);
  for (const Point& corner : plan.outline) extent.add(corner);
  return extent;
}

std::string polygon(const std::vector<Point>& corners, const Scale& scale, const std::string& fill,
                    const Stroke& edge) {
  std::string points;
  for (const Point& corner : corners) {
    const Point p = scale.at(corner);
    points += fmt::format("{:.1f},{:.1f} ", p.x, p.y);
  }
  return fmt::format(
      "<polygon points=\"{}\" fill=\"{}\" stroke=\"{}\" stroke-width=\"{:g}\" stroke-dasharray=\"{}\"/>\n", points,
      fill, edge.colour, edge.width, edge.dash);
}

/// The largest of 1, 2, 5, 10, 20 ... metres that is no longer than a fifth of the drawing.
double bar_length(double span) {
  const double most = span / 5;
  const double power = std::pow(10, std::floor(std::log10(most)));
  for (const double factor : {5.0, 2.0}) {
    if (factor * power <= most) return factor * power;
  }
  return power;
}

void draw_bar(Canvas& canvas, const Scale& scale, double span, double y) {
  const double length = bar_length(span);
  const double right = margin + length * scale.per_metre;
  canvas.line({margin, y}, {right, y}, {ink, 3, ""});
  canvas.line({margin, y - 6}, {margin, y + 6}, {ink, 2, ""});
  canvas.line({right, y - 6}, {right, y + 6}, {ink, 2, ""});
  canvas.text({right + 12, y + 6}, fmt::format("{:g} m", length), {17, ink, "start", false});
}

void draw_bores(Canvas& canvas, const SitePlan& plan, const Scale& scale) {
  for (const PlanBore& bore : plan.bores) {
    const Point p = scale.at(bore.at);
    canvas.circle(p, 6, {bore.hollow ? "#ffffff" : deep_pine, deep_pine, 2.5});
    if (!bore.label.empty()) canvas.text({p.x + 10, p.y - 8}, bore.label, {15, quiet_ink, "start", false});
  }
}

}  // namespace

std::string svg(const SitePlan& plan) {
  std::vector<std::string> subtitle;
  for (const std::string& paragraph : plan.subtitle) {
    for (const std::string& line : lines_within(paragraph, 18, picture_width - 40)) subtitle.push_back(line);
  }
  const Extent extent = extent_of(plan);
  const double span = std::max({extent.x.span(), extent.y.span(), 1.0});
  const double top = 56 + 25 * static_cast<double>(subtitle.size()) + 30;
  const Scale scale{extent.x.low(), extent.y.high(), most_drawn / span, top};
  const double bottom = top + extent.y.span() * scale.per_metre;

  Canvas canvas;
  canvas.text({20, 40}, fitted(plan.title, 25, picture_width - 40), {25, ink, "start", true});
  for (std::size_t i = 0; i < subtitle.size(); ++i) {
    canvas.text({20, 68 + 25 * static_cast<double>(i)}, subtitle[i], {18, quiet_ink, "start", false});
  }
  std::string ground;
  if (!plan.outline.empty()) ground += polygon(plan.outline, scale, "#f4f6f3", {still_ink, 2, ""});
  for (const auto& part : plan.kept_clear) ground += polygon(part, scale, pale_clay, {clay, 1.5, "6 4"});
  draw_bores(canvas, plan, scale);
  draw_bar(canvas, scale, span, bottom + 50);
  const double height = bottom + 80;
  return svg_element({plan.id, plan.title, plan.description, picture_width, height}, ground + canvas.content());
}

}  // namespace stillground::present
