#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

#include "tools/present/palette.hpp"
#include "tools/results/eft_panel_parts.hpp"
#include "tools/results/phases.hpp"

namespace stillground::results {

namespace {

using namespace present;

std::vector<MonthFluid> months_of(const FluidSummary& summary, int run_year) {
  std::vector<MonthFluid> months;
  for (const MonthFluid& month : summary.months) {
    if (month.run_year == run_year) months.push_back(month);
  }
  return months;
}

/// Where an hour lies on the axis of a run-year's months; beyond its end if it is not in that year.
double place_of(std::size_t hour, const std::vector<MonthFluid>& months) {
  const auto month = std::find_if(months.begin(), months.end(), [&](const MonthFluid& one) {
    return one.span.first <= hour && hour < one.span.last;
  });
  if (month == months.end()) return HUGE_VAL;
  const auto length = static_cast<double>(month->span.last - month->span.first);
  return static_cast<double>(month - months.begin()) + static_cast<double>(hour - month->span.first) / length;
}

struct Drawn {
  int run_year = 1;
  const Look& look;
};

void add_year(Panel& panel, const Source& source, const FluidSummary& summary, const Drawn& drawn, Quantity quantity,
              const TemperatureScale& scale) {
  const Look& look = drawn.look;
  Band band{{}, {}, {}, look.fill, look.opacity, {look.stroke.colour, 1, look.stroke.dash}};
  Line line{{},
            look.stroke,
            look.marker,
            fmt::format("mean, year {}\n{}", drawn.run_year, calendar_years(source.start, drawn.run_year))};
  const std::vector<MonthFluid> months = months_of(summary, drawn.run_year);
  for (const MonthFluid& month : months) {
    const Spread& spread = part(month, quantity);
    const double x = static_cast<double>(band.x.size()) + 0.5;
    band.x.push_back(x);
    band.low.push_back(scale(spread.least));
    band.high.push_back(scale(spread.most));
    line.points.push_back({x, scale(spread.mean)});
  }
  for (const double phase : source.phases) {
    const double x = place_of(static_cast<std::size_t>(phase / seconds_per_hour), months);
    if (x <= static_cast<double>(months.size())) {
      panel.marks.push_back({x, phase_name(phase, source.start), bore_ink});
    }
  }
  panel.bands.push_back(std::move(band));
  panel.lines.push_back(std::move(line));
}

/// Months by name; in a run of one year with the calendar years below.
Axis month_axis(const FluidSummary& summary) {
  Axis axis{summary.years.size() == 1 ? "month, calendar year" : "month", 0, 0, {}};
  for (const MonthFluid& month : months_of(summary, 1)) {
    axis.ticks.push_back({axis.to + 0.5, month_name(month.span.month)});
    const bool new_year = axis.to == 0 || month.span.month == 1;
    if (summary.years.size() == 1 && new_year) axis.ticks.back().below = fmt::format("{}", month.span.year);
    axis.to += 1;
  }
  return axis;
}

/// Rings the month in which a limit was first left, where there are no run-years to compare.
void ring_months(Panel& panel, const Source& source, const FluidSummary& summary, Quantity quantity,
                 const TemperatureScale& scale) {
  const std::vector<MonthFluid> months = months_of(summary, 1);
  for (const LimitOutcome& outcome : broken(summary, quantity)) {
    const auto month = static_cast<std::size_t>(place_of(*outcome.first_beyond, months));
    const Spread& spread = part(months.at(month), quantity);
    const double judged = outcome.by_month         ? spread.mean
                          : outcome.by_minute      ? outcome.closest
                          : outcome.limit.is_least ? spread.least
                                                   : spread.most;
    panel.notes.push_back(
        crossing_note({static_cast<double>(month) + 0.5, scale(judged)}, outcome, source, 2 * month > months.size()));
  }
}

}  // namespace

Panel month_panel(const Source& source, const FluidSummary& summary, Quantity quantity, const TemperatureScale& scale) {
  Panel panel;
  const int last = static_cast<int>(summary.years.size());
  const std::string times =
      last > 1 ? fmt::format("Month by month: run-year 1 and run-year {}", last) : "Month by month";
  panel.title = title_of(quantity, times);
  panel.x = month_axis(summary);
  if (last > 1) add_year(panel, source, summary, {1, first_look}, quantity, scale);
  add_year(panel, source, summary, {last, last_look}, quantity, scale);
  if (last == 1) ring_months(panel, source, summary, quantity, scale);
  add_limits_and_axis(panel, summary, quantity, scale);
  return panel;
}

}  // namespace stillground::results
