#include "tools/present/map_frame.hpp"

#include <algorithm>

#include "engine/units/display.hpp"
#include "tools/present/labels.hpp"

namespace stillground::present {

namespace {

constexpr double left_margin = 92, right_margin = 176;
constexpr double most_high = 620;
constexpr double title_room = 56, line_height = 25, axis_room = 44;

/// Round ticks within a stretch, in the units that people are shown.
Axis ticked(const std::string& name, double from, double to, int intervals, UnitSystem system) {
  const units::Shown shown = units::shown_in("m", system);
  Range range;
  range.add(shown(from));
  range.add(shown(to));
  Axis axis{name + " [" + std::string(shown.units) + "]", from, to, {}};
  for (Tick tick : round_axis("", range, intervals).ticks) {
    tick.at /= shown.scale;
    const double slack = 1e-9 * std::max(1.0, to - from);
    if (tick.at >= std::min(from, to) - slack && tick.at <= std::max(from, to) + slack) axis.ticks.push_back(tick);
  }
  return axis;
}

}  // namespace

MapFrame map_frame(const GroundMap& map) {
  MapFrame frame;
  for (const std::string& paragraph : map.subtitle) {
    for (const std::string& line : lines_within(paragraph, 18, map_width - 2 * map_margin)) {
      frame.subtitle.push_back(line);
    }
  }
  frame.top = title_room + line_height * static_cast<double>(frame.subtitle.size()) + axis_room;
  const double wide = map.x.back() - map.x.front(), high = map.y.back() - map.y.front();
  const double room = map_width - left_margin - right_margin;
  const double scale = map.upright ? 0 : std::min(room / wide, most_high / high);
  frame.width = map.upright ? room : wide * scale;
  frame.height = map.upright ? most_high : high * scale;
  frame.left = left_margin;
  frame.x = ticked(map.upright ? "along the section" : "x", map.x.front(), map.x.back(), 8, map.units);
  frame.y = map.upright ? ticked("depth", map.y.back(), map.y.front(), 8, map.units)
                        : ticked("y", map.y.front(), map.y.back(), 8, map.units);
  return frame;
}

}  // namespace stillground::present
