#include "tools/present/ground_map.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "tools/present/labels.hpp"
#include "tools/present/map_frame.hpp"
#include "tools/present/palette.hpp"
#include "tools/present/plan_measures.hpp"
#include "tools/present/ramp.hpp"

namespace stillground::present {

namespace {

constexpr double title_size = 25, bold_size = 27;
constexpr double swatch = 26;      ///< of the legend, wide and at most high [px]
constexpr double under_axis = 62;  ///< tick labels and the axis' name

void draw_axes(Canvas& canvas, const MapFrame& frame) {
  const Plot plot = frame.plot();
  for (const Tick& tick : frame.x.ticks) {
    const double x = plot.x(tick.at);
    canvas.line({x, plot.bottom()}, {x, plot.bottom() + 6}, {ink, 1.5, ""});
    canvas.text({x, plot.bottom() + 26}, tick.label, {map_text, ink, "middle", false});
  }
  for (const Tick& tick : frame.y.ticks) {
    const double y = plot.y(tick.at);
    canvas.line({plot.left - 6, y}, {plot.left, y}, {ink, 1.5, ""});
    canvas.text({plot.left - 10, y + 6}, tick.label, {map_text, ink, "end", false});
  }
  canvas.text({plot.left + plot.width / 2, plot.bottom() + 50}, frame.x.label, {map_text, quiet_ink, "middle", false});
  canvas.text({map_margin, plot.top - 16}, frame.y.label, {map_text, quiet_ink, "start", false});
  canvas.box({plot.left, plot.top}, {plot.right(), plot.bottom()}, "none", {ink, 1.5, ""});
}

void draw_bores(Canvas& canvas, const GroundMap& map, const MapFrame& frame) {
  for (const MapBore& bore : map.bores) {
    const Point at = frame.at(bore.at);
    if (!map.upright) {
      canvas.circle(at, 4.5, {bore_ink, "#ffffff", 2});
      continue;
    }
    const Point toe = frame.at({bore.at.x, bore.toe});
    canvas.line(at, toe, {"#ffffff", 5, ""});
    canvas.line(at, toe, {bore_ink, 2.5, bore.beside ? "7 5" : ""});
  }
}

void draw_outline(Canvas& canvas, const GroundMap& map, const MapFrame& frame) {
  if (map.outline.empty()) return;
  std::vector<Point> corners;
  for (const Point& corner : map.outline) corners.push_back(frame.at(corner));
  canvas.polygon(corners, "none", {"#ffffff", 5, ""});
  canvas.polygon(corners, "none", {outline_ink, 2.5, ""});
}

/// The bands from the highest down, a level's figure between two.
void draw_legend(Canvas& canvas, const GroundMap& map, const MapFrame& frame) {
  const double left = frame.left + frame.width + 28, top = frame.top + 14;
  const std::size_t bands = map.levels.size() + 1;
  const double high = std::min(swatch, (frame.height - 14) / static_cast<double>(bands));
  double y = frame.top - 16 - 20 * static_cast<double>(lines_of(map.quantity).size() - 1);
  for (const std::string& line : lines_of(map.quantity)) {
    canvas.text({left, y}, line, {map_text, quiet_ink, "start", false});
    y += 20;
  }
  for (std::size_t b = 0; b < bands; ++b) {
    const double at = top + high * static_cast<double>(bands - 1 - b);
    canvas.box({left, at}, {left + swatch, at + high}, ramp_colour(b, map.levels.size()), {ink, 1, ""});
    if (b < map.levels.size()) {
      canvas.text({left + swatch + 10, at + 6}, level_text(map.levels[b], map.levels), {map_text, ink, "start", false});
    }
  }
}

/// What the marks mean; returns where it ends.
double draw_keys(Canvas& canvas, const GroundMap& map, double top) {
  double x = map_margin;
  const double y = top;
  const auto word = [&](const std::string& text) {
    canvas.text({x + 34, y + 6}, text, {map_text, ink, "start", false});
    x += 34 + text_width(text, map_text) + 30;
  };
  if (!map.bores.empty() && !map.upright) {
    canvas.circle({x + 14, y}, 4.5, {bore_ink, "#ffffff", 2});
    word("bore");
  }
  const auto beside = [](const MapBore& bore) { return bore.beside; };
  for (const bool dashed : {false, true}) {
    const bool any = dashed ? std::any_of(map.bores.begin(), map.bores.end(), beside)
                            : !std::all_of(map.bores.begin(), map.bores.end(), beside);
    if (!map.upright || !any) continue;
    canvas.line({x, y}, {x + 28, y}, {bore_ink, 2.5, dashed ? "7 5" : ""});
    word(dashed ? "bore beside the section" : "bore");
  }
  if (!map.outline.empty()) {
    canvas.line({x, y}, {x + 28, y}, {outline_ink, 2.5, ""});
    word(map.outline_text);
  }
  return y + 22;
}

}  // namespace

std::string svg(const GroundMap& map, const std::string& layers) {
  const MapFrame frame = map_frame(map);
  Canvas over, head;
  head.text({map_margin, 40}, fitted(map.title, bold_size, map_width - 2 * map_margin),
            {title_size, ink, "start", true});
  for (std::size_t i = 0; i < frame.subtitle.size(); ++i) {
    head.text({map_margin, 68 + 25 * static_cast<double>(i)}, frame.subtitle[i], {18, quiet_ink, "start", false});
  }
  draw_outline(over, map, frame);
  draw_bores(over, map, frame);
  draw_axes(over, frame);
  draw_legend(over, map, frame);
  double y = std::max(frame.top + frame.height + under_axis,
                      frame.top + 14 + swatch * static_cast<double>(map.levels.size() + 1)) +
             20;
  y = draw_keys(over, map, y);
  if (!map.upright) {
    draw_scale_bars(
        over, {map.x.front(), map.y.back(), frame.plot().width / (map.x.back() - map.x.front()), frame.left, frame.top},
        {map_margin, y + 10});
    y += 60;
  }
  draw_footnotes(over, map.footnotes, y, map_width);
  const double height = y + footnotes_height(map.footnotes, map_width);
  return svg_element({map.id, map.title, map.description, map_width, height}, head.content() + layers + over.content());
}

}  // namespace stillground::present
