#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>

#include "engine/units/display.hpp"
#include "tools/present/palette.hpp"
#include "tools/results/drift_view.hpp"
#include "tools/results/phases.hpp"
#include "tools/results/temperature_scale.hpp"
#include "tools/results/trend.hpp"

namespace stillground::results {

namespace {

using namespace present;

Line yearly_line(const Drift& drift, const std::vector<double>& rise, const TemperatureScale& scale, Line line) {
  for (std::size_t y = 0; y < rise.size(); ++y) {
    line.points.push_back({static_cast<double>(y) + 1, scale(drift.yearly.undisturbed[y] + rise[y])});
  }
  return line;
}

/// The fitted straight line through the last years' means of the block.
Line trend_line(const Line& block, const Drift& drift, const TemperatureScale& scale) {
  const std::size_t taken = std::min<std::size_t>(block.points.size(), trend_years);
  const auto first = block.points.end() - static_cast<std::ptrdiff_t>(taken);
  const double mean =
      std::accumulate(first, block.points.end(), 0.0, [](double sum, const Point& p) { return sum + p.y; }) /
      static_cast<double>(taken);
  const double from = first->x;
  const double to = block.points.back().x;
  const double half_change = units::shown_in("K", scale.units)(drift.trend) / 10 * (to - from) / 2;
  return {{{from, mean - half_change}, {to, mean + half_change}}, {block_fill, 13, ""}, Marker::none, ""};
}

/// The trend in words, on the side of the block's line where the mid-points are not.
Note trend_note(const Line& trend, const Drift& drift, const TemperatureScale& scale) {
  const Point& from = trend.points.front();
  const Point& to = trend.points.back();
  const std::vector<double>& middle = drift.yearly.middle_rise;
  const bool middle_above = !middle.empty() && middle.back() > drift.yearly.block_rise.back();
  const Note::Side side = middle_above || (middle.empty() && drift.trend > 0) ? Note::Side::below : Note::Side::above;
  // Where the line climbs away from the word, it is clear of it.
  const bool leftward = (side == Note::Side::above) == (to.y > from.y);
  return {leftward ? to : from,
          fmt::format("trend {} per decade", scale.difference(drift.trend, 2, true)),
          block_ink,
          false,
          side,
          leftward};
}

Panel ground_panel(const Source& source, const Drift& drift, const TemperatureScale& scale) {
  Panel panel;
  const YearlyGround& yearly = drift.yearly;
  const int years = static_cast<int>(yearly.block_rise.size());
  panel.title = "Yearly means of the ground's temperature";
  panel.x = run_year_axis(years, source.start);
  panel.marks = phase_marks(source.phases, source.start, years);
  const Line block =
      yearly_line(drift, yearly.block_rise, scale, {{}, {block_ink, 3, ""}, Marker::filled, "ground block"});
  if (std::isfinite(drift.trend)) {
    panel.lines.push_back(trend_line(block, drift, scale));
    panel.notes.push_back(trend_note(panel.lines.back(), drift, scale));
  }
  if (!yearly.middle_rise.empty()) {
    panel.lines.push_back(yearly_line(drift, yearly.middle_rise, scale,
                                      {{}, {middle_ink, 2.5, "8 5"}, Marker::hollow, "mid-points\nbetween bores"}));
  }
  panel.lines.push_back(block);

  const double still = yearly.undisturbed.back();
  const double end = still + yearly.final_block;
  panel.levels = {{scale(still), {undisturbed_ink, 2, "3 6"}, "undisturbed\n" + scale.text(still, 1)},
                  {scale(end), {block_ink, 2, "12 5"}, "block in the end\n" + scale.text(end, 1)}};
  Range range;
  for (const Level& level : panel.levels) range.add(level.y);
  for (const Line& line : panel.lines) {
    for (const Point& point : line.points) range.add(point.y);
  }
  panel.y = round_axis(fmt::format("temperature over the bores' depth [{}]", scale.unit()), with_room(range, 0.02), 8);
  return panel;
}

}  // namespace

Figure drift_figure(const Source& source, const Drift& drift, const outputs::Drawing& drawing) {
  Figure figure;
  figure.id = "drift";
  figure.footnotes = drawing.footnotes;
  figure.title = "Does the ground drift?";
  figure.subtitle = {source.title, with_degree_signs(verdict(drift, drawing.units))};
  figure.description = with_degree_signs(verdict(drift, drawing.units));
  figure.panels = {ground_panel(source, drift, {drawing.units})};
  return figure;
}

}  // namespace stillground::results
