#include "tools/present/plan_land.hpp"

#include <fmt/format.h>

#include <utility>

#include "tools/present/palette.hpp"

namespace stillground::present {

namespace {

std::string points_of(const std::vector<Point>& corners, const PlanScale& scale) {
  std::string points;
  for (const Point& corner : corners) {
    const Point p = scale.at(corner);
    points += fmt::format("{}{:.1f},{:.1f}", points.empty() ? "" : " ", p.x, p.y);
  }
  return points;
}

/// The land within the setback of an outline: a stroke of twice that width with round joins is exactly that.
std::string strip(const PlanArea& area, const PlanScale& scale, const char* colour, double wider) {
  if (area.setback <= 0) return "";
  return fmt::format(
      "<polygon points=\"{}\" fill=\"none\" stroke=\"{}\" stroke-width=\"{:.1f}\" stroke-linejoin=\"round\"/>\n",
      points_of(area.outline, scale), colour, 2 * area.setback * scale.per_metre + wider);
}

/// All strips without bores; the darker ones below look out as the line around what they cover together.
std::string strips_of(const SitePlan& plan, const PlanScale& scale) {
  std::string strips;
  for (const auto& [colour, wider] : {std::pair{outline_ink, 2.0}, std::pair{setback_fill, 0.0}}) {
    strips += strip(*plan.plot, scale, colour, wider);
    for (const PlanArea& area : plan.kept_clear) strips += strip(area, scale, colour, wider);
  }
  return strips;
}

std::string filled(const PlanArea& area, const PlanScale& scale, const std::string& fill, const Stroke& edge) {
  return fmt::format("<polygon points=\"{}\" fill=\"{}\" stroke=\"{}\" stroke-width=\"{:g}\"/>\n",
                     points_of(area.outline, scale), fill, edge.colour, edge.width);
}

}  // namespace

std::string ground_of(const SitePlan& plan, const PlanScale& scale) {
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

}  // namespace stillground::present
