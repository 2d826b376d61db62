#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

#include "tools/present/palette.hpp"
#include "tools/results/celsius.hpp"
#include "tools/results/eft_view.hpp"
#include "tools/results/limit_view.hpp"
#include "tools/results/method_note.hpp"

namespace stillground::results {

namespace {

using namespace present;

/// What tells two run-years apart on paper.
struct Look {
  Stroke stroke;
  const char* fill = "";
  double opacity = 1;
  Marker marker = Marker::none;
};

const Look first_look{{first_year_ink, 2.5, "8 5"}, first_year_fill, 0.9, Marker::hollow};
const Look last_look{{last_year_ink, 3, ""}, last_year_fill, 0.6, Marker::filled};

void add_year(Panel& panel, const FluidSummary& summary, int run_year, const Look& look, Range& range) {
  Band band{{}, {}, {}, look.fill, look.opacity, {look.stroke.colour, 1, look.stroke.dash}};
  Line line{{}, look.stroke, look.marker, fmt::format("mean,\nyear {}", run_year)};
  for (const MonthFluid& month : summary.months) {
    if (month.run_year != run_year) continue;
    const double x = static_cast<double>(band.x.size()) + 0.5;
    band.x.push_back(x);
    band.low.push_back(celsius(month.eft.least));
    band.high.push_back(celsius(month.eft.most));
    line.points.push_back({x, celsius(month.eft.mean)});
  }
  range.add(band.low);
  range.add(band.high);
  panel.bands.push_back(std::move(band));
  panel.lines.push_back(std::move(line));
}

Axis month_axis(const FluidSummary& summary) {
  Axis axis{"month", 0, 0, {}};
  for (const MonthFluid& month : summary.months) {
    if (month.run_year != 1) continue;
    axis.ticks.push_back({axis.to + 0.5, month_name(month.span.month)});
    axis.to += 1;
  }
  return axis;
}

/// The axis says it where there is no curve.
std::string axis_name(const Range& range) {
  return range.empty() ? "EFT [°C]: no hour had flow" : "EFT [°C]";
}

Panel month_panel(const FluidSummary& summary) {
  Panel panel;
  Range range;
  const int last = static_cast<int>(summary.years.size());
  panel.title = last > 1 ? fmt::format("Month by month: run-year 1 and run-year {}", last) : "Month by month";
  panel.x = month_axis(summary);
  if (last > 1) add_year(panel, summary, 1, first_look, range);
  add_year(panel, summary, last, last_look, range);
  const std::string name = axis_name(range);
  panel.levels = limit_levels(summary.limits, range);
  panel.y = round_axis(name, range, 8);
  return panel;
}

Line extreme_line(const FluidSummary& summary, double Spread::*which, const Stroke& stroke, const std::string& label) {
  Line line{{}, stroke, Marker::none, label};
  for (const YearFluid& year : summary.years) {
    line.points.push_back({static_cast<double>(year.run_year), celsius(year.eft.*which)});
  }
  return line;
}

/// Rings the extreme of the year in which a limit on the hours was first left.
void add_first_crossings(Panel& panel, const FluidSummary& summary, const Date& start) {
  for (const LimitOutcome& outcome : summary.limits) {
    if (outcome.limit.quantity != "eft" || outcome.by_month || !outcome.first_beyond) continue;
    const int year = run_year_of(*outcome.first_beyond);
    const Spread& eft = summary.years[static_cast<std::size_t>(year - 1)].eft;
    panel.notes.push_back({{static_cast<double>(year), celsius(outcome.limit.is_least ? eft.least : eft.most)},
                           "beyond since " + first_beyond_text(outcome, start).substr(0, 10),
                           limit_ink,
                           true,
                           outcome.limit.is_least ? Note::Side::above : Note::Side::below,
                           2 * year > static_cast<int>(summary.years.size())});
  }
}

Panel year_panel(const FluidSummary& summary, const Date& start) {
  Panel panel;
  Range range;
  panel.title = "Every run-year";
  panel.x = run_year_axis(static_cast<int>(summary.years.size()));
  panel.lines.push_back(extreme_line(summary, &Spread::most, {every_year_ink, 3, ""}, "greatest hour"));
  panel.lines.push_back(extreme_line(summary, &Spread::mean, {every_year_ink, 2, "3 5"}, "mean"));
  panel.lines.push_back(extreme_line(summary, &Spread::least, {every_year_ink, 3, "9 5"}, "least hour"));
  for (const Line& line : panel.lines) {
    for (const Point& point : line.points) range.add(point.y);
  }
  const std::string name = axis_name(range);
  panel.levels = limit_levels(summary.limits, range);
  panel.y = round_axis(name, range, 8);
  add_first_crossings(panel, summary, start);
  return panel;
}

std::string describe(const FluidSummary& summary, const Date& start) {
  const auto say = [](const YearFluid& year) {
    if (year.eft.hours == 0) return fmt::format("In run-year {} no hour had flow.", year.run_year);
    return fmt::format(
        "In run-year {} the entering fluid temperature lies between {:.1f} and {:.1f} °C, its mean is {:.1f} °C.",
        year.run_year, celsius(year.eft.least), celsius(year.eft.most), celsius(year.eft.mean));
  };
  std::string text = say(summary.years.front());
  if (summary.years.size() > 1) text += " " + say(summary.years.back());
  for (const LimitOutcome& outcome : summary.limits) {
    const std::string first = first_beyond_text(outcome, start);
    text += fmt::format(" Limit {} of {:.4g} °C: {}.", outcome.limit.name, celsius(outcome.limit.value),
                        outcome.first_beyond ? "first left " + first : first);
  }
  return text;
}

}  // namespace

Figure eft_figure(const Source& source, const FluidSummary& summary, const outputs::Drawing& drawing) {
  Figure figure;
  figure.id = "eft";
  figure.footnotes = drawing.footnotes;
  figure.title = "Entering fluid temperature";
  figure.subtitle = {source.title, "Hours with flow only; the shading spans the least and the greatest hourly mean."};
  if (const std::string note = method_note(source.method); !note.empty()) figure.subtitle.push_back(note);
  figure.description = describe(summary, source.start);
  figure.panels = {month_panel(summary)};
  if (summary.years.size() > 1) figure.panels.push_back(year_panel(summary, source.start));
  return figure;
}

}  // namespace stillground::results
