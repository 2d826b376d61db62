#include <cstddef>
#include <utility>

#include "tools/present/palette.hpp"
#include "tools/results/eft_panel_parts.hpp"
#include "tools/results/phases.hpp"

namespace stillground::results {

namespace {

using namespace present;

Line extreme_line(const FluidSummary& summary, Quantity quantity, double Spread::*which, const TemperatureScale& scale,
                  const Stroke& stroke, const std::string& label) {
  Line line{{}, stroke, Marker::none, label};
  for (const YearFluid& year : summary.years) {
    line.points.push_back({static_cast<double>(year.run_year), scale(part(year, quantity).*which)});
  }
  return line;
}

/// What a limit on monthly means, or on minutes, judges: the month or minute nearest to it, or furthest beyond, of
/// every run-year.
void add_judged_spans(Panel& panel, const FluidSummary& summary, Quantity quantity, const TemperatureScale& scale) {
  for (const LimitOutcome& outcome : summary.limits) {
    if ((!outcome.by_month && !outcome.by_minute) || quantity_of(outcome.limit.quantity) != quantity) continue;
    const std::string end = outcome.limit.is_least ? "least " : "greatest ";
    Line line{{}, {every_year_ink, 2, "14 4 3 4"}, Marker::none, end + outcome.limit.over};
    for (std::size_t y = 0; y < outcome.closest_by_year.size(); ++y) {
      line.points.push_back({static_cast<double>(y) + 1, scale(outcome.closest_by_year[y])});
    }
    panel.lines.push_back(std::move(line));
  }
}

/// The ends of the lines in the colours in which the months of these two run-years are drawn.
void mark_ends(Panel& panel) {
  std::vector<Line> ends;
  for (const Line& line : panel.lines) {
    ends.push_back({{line.points.front()}, first_look.stroke, first_look.marker, ""});
    ends.push_back({{line.points.back()}, last_look.stroke, last_look.marker, ""});
  }
  panel.lines.insert(panel.lines.end(), ends.begin(), ends.end());
}

}  // namespace

Panel year_panel(const Source& source, const FluidSummary& summary, Quantity quantity, const TemperatureScale& scale) {
  Panel panel;
  const int years = static_cast<int>(summary.years.size());
  panel.title = title_of(quantity, "Every run-year");
  panel.x = run_year_axis(years, source.start);
  panel.marks = phase_marks(source.phases, source.start, years);
  const auto add = [&](double Spread::*which, const Stroke& stroke, const char* label) {
    panel.lines.push_back(extreme_line(summary, quantity, which, scale, stroke, label));
  };
  add(&Spread::most, {every_year_ink, 2.5, ""}, "greatest hour");
  add(&Spread::mean, {every_year_ink, 2, "3 5"}, "mean");
  add(&Spread::least, {every_year_ink, 2.5, "9 5"}, "least hour");
  mark_ends(panel);
  add_judged_spans(panel, summary, quantity, scale);
  add_limits_and_axis(panel, summary, quantity, scale);
  for (const LimitOutcome& outcome : broken(summary, quantity)) {
    const int year = run_year_of(*outcome.first_beyond);
    const double worst = outcome.closest_by_year[static_cast<std::size_t>(year - 1)];
    panel.notes.push_back(crossing_note({static_cast<double>(year), scale(worst)}, outcome, source, 2 * year > years));
  }
  return panel;
}

}  // namespace stillground::results
