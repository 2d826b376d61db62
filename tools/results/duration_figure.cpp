#include <fmt/format.h>

#include "tools/present/palette.hpp"
#include "tools/results/eft_panel_parts.hpp"
#include "tools/results/limit_view.hpp"
#include "tools/results/report_figures.hpp"

namespace stillground::results {

namespace {

using namespace present;

Axis percent_axis() {
  Axis axis{"share of the hours with flow in which the EFT is at or below the curve [%]", 0, 100, {}};
  for (int percent = 0; percent <= 100; percent += 20) {
    axis.ticks.push_back({static_cast<double>(percent), fmt::format("{}", percent)});
  }
  return axis;
}

/// The first and the last run-year as everywhere, those between thinner.
Stroke stroke_of(std::size_t named, std::size_t count) {
  if (named == 0) return first_look.stroke;
  if (named + 1 == count) return last_look.stroke;
  return {every_year_ink, 1.5, named == 1 ? "2 4" : "10 4 2 4"};
}

}  // namespace

Figure duration_figure(const Source& source, const FluidSummary& summary, const outputs::Drawing& drawing) {
  const TemperatureScale scale{drawing.units};
  const DurationCurve& curve = summary.duration;
  Panel panel;
  panel.title = "Least hour at the left, greatest at the right";
  panel.x = percent_axis();
  Range range;
  for (std::size_t n = 0; n < curve.run_years.size(); ++n) {
    Line line{{}, stroke_of(n, curve.run_years.size()), Marker::none, fmt::format("year {}", curve.run_years[n])};
    for (std::size_t s = 0; s < curve.shares.size(); ++s) {
      line.points.push_back({100 * curve.shares[s], scale(curve.eft[n][s])});
      range.add(line.points.back().y);
    }
    panel.lines.push_back(std::move(line));
  }
  panel.levels = limit_levels(summary.limits, Quantity::eft, scale, range);
  panel.y = round_axis(fmt::format("EFT [{}]", scale.unit()), with_room(range, 0.02), 8);
  Figure figure;
  figure.id = "duration";
  figure.footnotes = drawing.footnotes;
  figure.title = "How long the fluid is how cold, and how warm";
  figure.subtitle = {source.title};
  figure.description = "Duration curves of the entering fluid temperature.";
  for (std::size_t n = 0; n < curve.run_years.size(); ++n) {
    figure.description += fmt::format(
        " Run-year {}: a tenth of the hours below {}, half below {}, nine tenths below {}.", curve.run_years[n],
        scale.text(curve.eft[n][10], 1), scale.text(curve.eft[n][50], 1), scale.text(curve.eft[n][90], 1));
  }
  figure.panels = {panel};
  return figure;
}

}  // namespace stillground::results
