#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "tools/present/contours.hpp"
#include "tools/present/labels.hpp"
#include "tools/present/map_frame.hpp"
#include "tools/present/palette.hpp"
#include "tools/present/plan_labels.hpp"
#include "tools/present/ramp.hpp"
#include "tools/present/table.hpp"

namespace stillground::present {

namespace {

constexpr double name_size = 15;      ///< of the levels' names on their lines [px]
constexpr double named_length = 90;   ///< a shorter line has no name [px]
constexpr double name_spacing = 420;  ///< along a line, from name to name [px]
constexpr double bend = 1.12;         ///< a stretch under a name is at most so much longer than straight

std::string path_of(const std::vector<Point>& points) {
  std::string path;
  for (const Point& p : points) path += fmt::format("{}{:.1f} {:.1f}", path.empty() ? "M" : "L", p.x, p.y);
  return path;
}

std::vector<Point> on_picture(const std::vector<Point>& points, const MapFrame& frame) {
  std::vector<Point> placed;
  for (const Point& p : points) placed.push_back(frame.at(p));
  return placed;
}

double length_of(const std::vector<Point>& line) {
  double length = 0;
  for (std::size_t i = 1; i < line.size(); ++i)
    length += std::hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y);
  return length;
}

bool is_free(const PlanBox& box, const std::vector<PlanBox>& taken) {
  return std::none_of(taken.begin(), taken.end(), [&](const PlanBox& other) { return box.meets(other); });
}

/// Writes a level's name on a line where that is nearly straight, again after a while, clear of what is taken.
void name_line(Canvas& canvas, const std::vector<Point>& line, const std::string& name, const MapFrame& frame,
               std::vector<PlanBox>& taken) {
  if (length_of(line) < named_length) return;
  const double wide = text_width(name, name_size) + 8, high = name_size + 4;
  double since = 0.75 * name_spacing;
  for (std::size_t i = 1; i < line.size(); ++i) {
    since += std::hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y);
    if (since < name_spacing) continue;
    double along = 0;
    std::size_t end = i;
    while (end + 1 < line.size() && along < wide) {
      along += std::hypot(line[end + 1].x - line[end].x, line[end + 1].y - line[end].y);
      ++end;
    }
    if (along < wide || along > bend * std::hypot(line[end].x - line[i].x, line[end].y - line[i].y)) continue;
    const Point middle = line[(i + end) / 2];
    const PlanBox box{middle.x - wide / 2, middle.y - high / 2, middle.x + wide / 2, middle.y + high / 2};
    const bool inside = box.left > frame.left + 2 && box.right < frame.left + frame.width - 2 &&
                        box.top > frame.top + 2 && box.bottom < frame.top + frame.height - 2;
    if (!inside || !is_free(box, taken)) continue;
    taken.push_back(box);
    canvas.text({middle.x, middle.y + 0.36 * name_size}, name, {name_size, ink, "middle", false});
    since = 0;
  }
}

std::vector<PlanBox> boxes_of(const GroundMap& map, const MapFrame& frame) {
  std::vector<PlanBox> boxes;
  for (const MapBore& bore : map.bores) {
    const Point at = frame.at(bore.at), toe = map.upright ? frame.at({bore.at.x, bore.toe}) : at;
    boxes.push_back({at.x - 6, at.y - 6, at.x + 6, toe.y + 6});
  }
  return boxes;
}

}  // namespace

std::vector<double> round_levels(std::vector<double> values, int wanted) {
  std::sort(values.begin(), values.end());
  const auto at = [&](double part) {
    return values[static_cast<std::size_t>(part * static_cast<double>(values.size() - 1))];
  };
  Range range;
  range.add(at(0.01));
  range.add(at(0.99));
  if (range.span() < 1e-6) return {range.low()};
  std::vector<double> levels;
  for (const Tick& tick : round_axis("", range, wanted).ticks) {
    if (tick.at > range.low() && tick.at < range.high()) levels.push_back(tick.at);
  }
  if (levels.empty()) levels.push_back((range.low() + range.high()) / 2);
  return levels;
}

std::string level_text(double level, const std::vector<double>& levels) {
  const double step = levels.size() > 1 ? levels[1] - levels[0] : 0.1;
  const int digits = std::clamp(-static_cast<int>(std::floor(std::log10(step) + 1e-9)), 0, 6);
  return fixed(level, digits);
}

std::string map_layer(const GroundMap& map, const std::vector<double>& values) {
  const MapFrame frame = map_frame(map);
  Canvas canvas;
  canvas.box({frame.left, frame.top}, {frame.left + frame.width, frame.top + frame.height},
             ramp_colour(0, map.levels.size()), {"none", 0, ""});
  std::string bands, lines;
  Canvas names;
  std::vector<PlanBox> taken = boxes_of(map, frame);
  for (std::size_t n = 0; n < map.levels.size(); ++n) {
    const std::vector<Loop> loops = loops_above({map.x, map.y, values}, map.levels[n]);
    if (loops.empty()) continue;
    std::string region, line;
    for (const Loop& loop : loops) region += path_of(on_picture(loop.points, frame)) + "Z";
    for (const auto& one : level_lines(loops)) {
      const std::vector<Point> placed = on_picture(one, frame);
      line += path_of(placed);
      name_line(names, placed, level_text(map.levels[n], map.levels), frame, taken);
    }
    bands += fmt::format("<path d=\"{}\" fill=\"{}\" fill-rule=\"evenodd\"/>\n", region,
                         ramp_colour(n + 1, map.levels.size()));
    if (!line.empty())
      lines += fmt::format("<path d=\"{}\" fill=\"none\" stroke=\"{}\" stroke-width=\"1\"/>\n", line, ink);
  }
  return canvas.content() + bands + lines + names.content();
}

}  // namespace stillground::present
