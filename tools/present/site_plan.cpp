#include "tools/present/site_plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/present/axis.hpp"
#include "tools/present/canvas.hpp"
#include "tools/present/labels.hpp"
#include "tools/present/palette.hpp"
#include "tools/present/plan_labels.hpp"
#include "tools/present/plan_legend.hpp"

namespace stillground::present {

namespace {

constexpr double picture_width = 900;
constexpr double margin = 60;
constexpr double most_wide = picture_width - 2 * margin;
constexpr double most_high = 400;
constexpr double label_size = 16;
constexpr double bold_size = 27;  ///< of a plain letter as wide as the bold ones of the title, which are of 25

/// From metres to the picture.
struct Scale {
  double x0 = 0, y1 = 0;  ///< left and upper edge [m]
  double per_metre = 1;
  double left = 0, top = 0;

  Point at(const Point& p) const { return {left + (p.x - x0) * per_metre, top + (y1 - p.y) * per_metre}; }
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
  if (plan.plot) {
    for (const Point& corner : plan.plot->outline) extent.add(corner);
  }
  if (plan.chamber) extent.add(*plan.chamber);
  return extent;
}

Scale scale_for(const Extent& extent, double top) {
  const double wide = std::max(extent.x.span(), 1.0), high = std::max(extent.y.span(), 1.0);
  const double per_metre = std::min(most_wide / wide, most_high / high);
  return {extent.x.low(), extent.y.high(), per_metre, (picture_width - extent.x.span() * per_metre) / 2, top};
}

std::string points_of(const std::vector<Point>& corners, const Scale& scale) {
  std::string points;
  for (const Point& corner : corners) {
    const Point p = scale.at(corner);
    points += fmt::format("{}{:.1f},{:.1f}", points.empty() ? "" : " ", p.x, p.y);
  }
  return points;
}

/// The land within the setback of an outline: a stroke of twice that width with round joins is exactly that.
std::string strip(const PlanArea& area, const Scale& scale, const char* colour, double wider) {
  if (area.setback <= 0) return "";
  return fmt::format(
      "<polygon points=\"{}\" fill=\"none\" stroke=\"{}\" stroke-width=\"{:.1f}\" stroke-linejoin=\"round\"/>\n",
      points_of(area.outline, scale), colour, 2 * area.setback * scale.per_metre + wider);
}

/// All strips without bores; the darker ones below look out as the line around what they cover together.
std::string strips_of(const SitePlan& plan, const Scale& scale) {
  std::string strips;
  for (const auto& [colour, wider] : {std::pair{outline_ink, 2.0}, std::pair{setback_fill, 0.0}}) {
    strips += strip(*plan.plot, scale, colour, wider);
    for (const PlanArea& area : plan.kept_clear) strips += strip(area, scale, colour, wider);
  }
  return strips;
}

std::string filled(const PlanArea& area, const Scale& scale, const std::string& fill, const Stroke& edge) {
  return fmt::format("<polygon points=\"{}\" fill=\"{}\" stroke=\"{}\" stroke-width=\"{:g}\"/>\n",
                     points_of(area.outline, scale), fill, edge.colour, edge.width);
}

/// The land, its strips without bores, and what is kept clear.
std::string ground_of(const SitePlan& plan, const Scale& scale) {
  if (!plan.plot) return "";
  const std::string clip = plan.id + "-land", hatch = plan.id + "-hatch";
  std::string ground = fmt::format(
      "<defs><clipPath id=\"{}\"><polygon points=\"{}\"/></clipPath>\n"
      "<pattern id=\"{}\" width=\"9\" height=\"9\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\">"
      "<rect width=\"9\" height=\"9\" fill=\"{}\"/><line x1=\"0\" y1=\"0\" x2=\"0\" y2=\"9\" stroke=\"{}\" "
      "stroke-width=\"2.5\"/></pattern></defs>\n",
      clip, points_of(plan.plot->outline, scale), hatch, kept_clear_fill, kept_clear_ink);
  ground += filled(*plan.plot, scale, "#ffffff", {outline_ink, 2, ""});
  ground += fmt::format("<g clip-path=\"url(#{})\">\n{}</g>\n", clip, strips_of(plan, scale));
  for (const PlanArea& area : plan.kept_clear) {
    ground += filled(area, scale, fmt::format("url(#{})", hatch), {kept_clear_ink, 1.5, ""});
  }
  return ground + filled(*plan.plot, scale, "none", {outline_ink, 2.5, ""});
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

void draw_bar(Canvas& canvas, const Scale& scale, double y) {
  const double length = bar_length(most_wide / scale.per_metre);
  const double right = margin + length * scale.per_metre;
  canvas.line({margin, y}, {right, y}, {ink, 3, ""});
  canvas.line({margin, y - 6}, {margin, y + 6}, {ink, 2, ""});
  canvas.line({right, y - 6}, {right, y + 6}, {ink, 2, ""});
  canvas.text({right + 12, y + 6}, fmt::format("{:g} m", length), {17, ink, "start", false});
}

/// Arrows of the scenario's x and y; it says nothing about north.
void draw_directions(Canvas& canvas, Point corner) {
  const Stroke stroke{ink, 2, ""};
  const double reach = 34, barb = 6;
  canvas.line(corner, {corner.x + reach, corner.y}, stroke);
  canvas.line(corner, {corner.x, corner.y - reach}, stroke);
  for (const double side : {-1.0, 1.0}) {
    canvas.line({corner.x + reach - barb, corner.y + side * barb}, {corner.x + reach, corner.y}, stroke);
    canvas.line({corner.x + side * barb, corner.y - reach + barb}, {corner.x, corner.y - reach}, stroke);
  }
  canvas.text({corner.x + reach + 8, corner.y + 6}, "x", {17, ink, "start", false});
  canvas.text({corner.x + 10, corner.y - reach + 8}, "y", {17, ink, "start", false});
}

PlanSign sign_of(const PlanBore& bore) {
  if (bore.shut_off) return bore.later ? PlanSign::later_shut_off : PlanSign::shut_off;
  return bore.later ? PlanSign::later : PlanSign::bore;
}

/// A mark's radius [px]: smaller where bores stand close on the picture.
double mark_radius(const SitePlan& plan, const Scale& scale) {
  double nearest = HUGE_VAL;
  for (std::size_t i = 0; i < plan.bores.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const Point &a = plan.bores[i].at, &b = plan.bores[j].at;
      nearest = std::min(nearest, std::hypot(b.x - a.x, b.y - a.y));
    }
  }
  return std::clamp(0.3 * nearest * scale.per_metre, 1.5, 7.0);
}

void draw_bores(Canvas& canvas, const SitePlan& plan, const Scale& scale) {
  const double radius = mark_radius(plan, scale);
  std::vector<PlanMark> marks;
  for (const PlanBore& bore : plan.bores) {
    marks.push_back({scale.at(bore.at), bore.label});
    draw_bore(canvas, sign_of(bore), marks.back().at, radius);
  }
  const auto places = place_labels(marks, radius + 1.5, label_size, picture_width);
  for (std::size_t i = 0; i < marks.size(); ++i) {
    if (places[i]) canvas.text(places[i]->at, marks[i].label, {label_size, quiet_ink, "start", false});
  }
}

std::vector<LegendEntry> legend_of(const SitePlan& plan) {
  std::vector<LegendEntry> entries;
  const auto any = [&](auto has) { return std::any_of(plan.bores.begin(), plan.bores.end(), has); };
  const bool later = any([](const PlanBore& bore) { return bore.later; });
  if (later) entries.push_back({PlanSign::bore, "works from the start"});
  if (later) entries.push_back({PlanSign::later, plan.later_text});
  if (any([](const PlanBore& bore) { return bore.shut_off; })) {
    entries.push_back({PlanSign::shut_off, plan.shut_off_text});
  }
  if (!plan.links.empty()) entries.push_back({PlanSign::link, "the fluid goes from one bore to the next"});
  if (plan.chamber) entries.push_back({PlanSign::chamber, "chamber"});
  if (!plan.kept_clear.empty()) entries.push_back({PlanSign::kept_clear, "kept clear"});
  const auto strip = [](const PlanArea& area) { return area.setback > 0; };
  if (plan.plot && (strip(*plan.plot) || std::any_of(plan.kept_clear.begin(), plan.kept_clear.end(), strip))) {
    entries.push_back({PlanSign::setback, "setback: no bore's axis stands within it"});
  }
  return entries;
}

}  // namespace

std::string svg(const SitePlan& plan) {
  std::vector<std::string> subtitle;
  for (const std::string& paragraph : plan.subtitle) {
    for (const std::string& line : lines_within(paragraph, 18, picture_width - 40)) subtitle.push_back(line);
  }
  const Extent extent = extent_of(plan);
  const Scale scale = scale_for(extent, 56 + 25 * static_cast<double>(subtitle.size()) + 36);
  const double bottom = scale.top + extent.y.span() * scale.per_metre;

  Canvas canvas;
  canvas.text({20, 40}, fitted(plan.title, bold_size, picture_width - 40), {25, ink, "start", true});
  for (std::size_t i = 0; i < subtitle.size(); ++i) {
    canvas.text({20, 68 + 25 * static_cast<double>(i)}, subtitle[i], {18, quiet_ink, "start", false});
  }
  for (const PlanLink& link : plan.links) draw_link(canvas, scale.at(link.from), scale.at(link.to));
  if (plan.chamber) draw_chamber(canvas, scale.at(*plan.chamber));
  draw_bores(canvas, plan, scale);
  const double foot = bottom + 76;
  draw_bar(canvas, scale, foot);
  draw_directions(canvas, {picture_width - margin - 50, foot});
  const std::vector<LegendEntry> legend = legend_of(plan);
  draw_legend(canvas, legend, {margin, foot + 20}, plan.id + "-hatch");
  const double end = foot + 30 + legend_height(legend.size());
  draw_footnotes(canvas, plan.footnotes, end, picture_width);
  const double height = end + footnotes_height(plan.footnotes, picture_width);
  return svg_element({plan.id, plan.title, plan.description, picture_width, height},
                     ground_of(plan, scale) + canvas.content());
}

}  // namespace stillground::present
