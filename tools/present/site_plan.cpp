#include "tools/present/site_plan.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>

#include "tools/present/canvas.hpp"
#include "tools/present/labels.hpp"
#include "tools/present/palette.hpp"
#include "tools/present/plan_labels.hpp"
#include "tools/present/plan_land.hpp"
#include "tools/present/plan_legend.hpp"
#include "tools/present/plan_measures.hpp"
#include "tools/present/plan_rows.hpp"
#include "tools/present/plan_scale.hpp"

namespace stillground::present {

namespace {

constexpr double picture_width = 900;
constexpr double margin = 60;
constexpr double left_margin = 130;  ///< with the measure along y
constexpr double most_wide = picture_width - left_margin - margin;
constexpr double usually_high = 400, most_high = 760;
constexpr double legible = 36;    ///< between two bores with numbers: the picture grows for it [px]
constexpr double crowded = 22;    ///< nearer than this only the ends of rows have numbers [px]
constexpr double bold_size = 27;  ///< of a plain letter as wide as the bold ones of the title, which are of 25

PlanExtent extent_of(const SitePlan& plan) {
  PlanExtent extent;
  for (const PlanBore& bore : plan.bores) extent.add(bore.at);
  if (plan.plot) {
    for (const Point& corner : plan.plot->outline) extent.add(corner);
  }
  if (plan.chamber) extent.add(*plan.chamber);
  return extent;
}

std::vector<Point> points_of(const SitePlan& plan) {
  std::vector<Point> points;
  for (const PlanBore& bore : plan.bores) points.push_back(bore.at);
  return points;
}

PlanScale scale_for(const PlanExtent& extent, double nearest, double top) {
  const double wide = most_wide / std::max(extent.x.span(), 1.0), high = 1 / std::max(extent.y.span(), 1.0);
  const double usual = std::min(wide, usually_high * high), most = std::min(wide, most_high * high);
  const double per_metre = nearest > 0 ? std::clamp(legible / nearest, usual, most) : usual;
  return {extent.x.low(), extent.y.high(), per_metre, left_margin + (most_wide - extent.x.span() * per_metre) / 2, top};
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

/// A mark's radius [px]: smaller where bores stand close on the picture.
double mark_radius(double nearest, const PlanScale& scale) {
  return nearest > 0 ? std::clamp(0.3 * nearest * scale.per_metre, 1.5, 7.0) : 7.0;
}

/// Of the labels [px]: as small as is still read in print where bores stand close.
double label_size(double nearest, const PlanScale& scale) {
  return nearest > 0 ? std::clamp(0.4 * nearest * scale.per_metre, 11.0, 16.0) : 16.0;
}

/// Labels in their places: either all bores have their longest or none, so that a plan does not name some bores and
/// leave it open of others.
std::vector<std::optional<LabelPlace>> placed(std::vector<PlanMark> marks, double radius, double size,
                                              const std::vector<PlanBox>& taken) {
  auto places = place_labels(marks, radius, size, picture_width, taken);
  bool all = true;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    if (!marks[i].labels.empty() && (!places[i] || places[i]->text != marks[i].labels.front())) all = false;
  }
  if (all) return places;
  for (PlanMark& mark : marks) {
    if (mark.labels.size() > 1) mark.labels.erase(mark.labels.begin());
  }
  return place_labels(marks, radius, size, picture_width, taken);
}

void draw_bores(Canvas& canvas, const SitePlan& plan, const PlanScale& scale, const PlanExtent& extent) {
  const std::vector<Point> points = points_of(plan);
  const double nearest = nearest_distance(points);
  const double radius = mark_radius(nearest, scale), size = label_size(nearest, scale);
  std::vector<PlanBox> taken;
  for (const PlanMeasure& measure : measures_of(points, scale, radius, extent, plan.units)) {
    draw_measure(canvas, measure);
    for (const PlanBox& box : boxes_of(measure)) taken.push_back(box);
  }
  const auto ways = row_ends(points);
  std::vector<PlanMark> marks;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const PlanBore& bore = plan.bores[i];
    marks.push_back({scale.at(bore.at), bore.labels});
    if (!ways[i] && nearest * scale.per_metre < crowded) marks.back().labels.clear();
    if (ways[i]) marks.back().away = Point{ways[i]->x, -ways[i]->y};  // y leads down on the picture
    draw_bore(canvas, {bore.phase, bore.shut_off}, marks.back().at, radius);
  }
  for (const auto& label : placed(std::move(marks), radius + 1.5, size, taken)) {
    if (label) canvas.text(label->at, label->text, {size, ink, "start", false});
  }
}

/// An entry for each phase; those that share the last shape share an entry.
void add_phases(const SitePlan& plan, std::vector<LegendEntry>& entries) {
  int latest = 0;
  for (const PlanBore& bore : plan.bores) latest = std::max(latest, bore.phase);
  if (latest == 0) {
    if (plan.bores.size() > 1) entries.push_back({PlanSign::bore, "bore, numbered as in the table"});
    return;
  }
  for (int phase = 0; phase <= std::min(latest, last_phase); ++phase) {
    entries.push_back({PlanSign::bore, plan.phase_texts.at(static_cast<std::size_t>(phase)), phase});
  }
  if (latest > last_phase) entries.back().text += ", or " + plan.phase_texts.at(static_cast<std::size_t>(latest));
}

std::vector<LegendEntry> legend_of(const SitePlan& plan) {
  std::vector<LegendEntry> entries;
  add_phases(plan, entries);
  if (std::any_of(plan.bores.begin(), plan.bores.end(), [](const PlanBore& bore) { return bore.shut_off; })) {
    entries.push_back({PlanSign::shut_off, plan.shut_off_text});
  }
  if (!plan.links.empty()) entries.push_back({PlanSign::link, "the fluid goes from one bore to the next"});
  if (plan.chamber) entries.push_back({PlanSign::chamber, "chamber"});
  if (!plan.kept_clear.empty()) entries.push_back({PlanSign::kept_clear, "kept clear"});
  const auto strip = [](const PlanArea& area) { return area.setback > 0; };
  if (plan.plot && (strip(*plan.plot) || std::any_of(plan.kept_clear.begin(), plan.kept_clear.end(), strip))) {
    entries.push_back({PlanSign::setback, plan.setback_text});
  }
  return entries;
}

}  // namespace

std::string svg(const SitePlan& plan) {
  std::vector<std::string> subtitle;
  for (const std::string& paragraph : plan.subtitle) {
    for (const std::string& line : lines_within(paragraph, 18, picture_width - 40)) subtitle.push_back(line);
  }
  const PlanExtent extent = extent_of(plan);
  const double head = 56 + 25 * static_cast<double>(subtitle.size()) + 60;
  const PlanScale scale = scale_for(extent, nearest_distance(points_of(plan)), head);
  const double bottom = scale.top + extent.y.span() * scale.per_metre;

  Canvas canvas;
  canvas.text({20, 40}, fitted(plan.title, bold_size, picture_width - 40), {25, ink, "start", true});
  for (std::size_t i = 0; i < subtitle.size(); ++i) {
    canvas.text({20, 68 + 25 * static_cast<double>(i)}, subtitle[i], {18, quiet_ink, "start", false});
  }
  for (const PlanLink& link : plan.links) draw_link(canvas, scale.at(link.from), scale.at(link.to));
  if (plan.chamber) draw_chamber(canvas, scale.at(*plan.chamber));
  draw_bores(canvas, plan, scale, extent);
  const double foot = bottom + 96;
  draw_scale_bars(canvas, scale, {margin, foot});
  draw_directions(canvas, {picture_width - margin - 50, foot + 26});
  const std::vector<LegendEntry> legend = legend_of(plan);
  draw_legend(canvas, legend, {margin, foot + 46}, plan.id + "-hatch");
  const double end = foot + 56 + legend_height(legend.size());
  draw_footnotes(canvas, plan.footnotes, end, picture_width);
  const double height = end + footnotes_height(plan.footnotes, picture_width);
  return svg_element({plan.id, plan.title, plan.description, picture_width, height},
                     ground_of(plan, scale) + canvas.content());
}

}  // namespace stillground::present
