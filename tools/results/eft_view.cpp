#include "tools/results/eft_view.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstddef>

#include "tools/results/celsius.hpp"
#include "tools/results/energy_view.hpp"
#include "tools/results/limit_view.hpp"
#include "tools/results/method_note.hpp"
#include "tools/results/minutes.hpp"
#include "tools/results/phases.hpp"

namespace stillground::results {

namespace {

using present::Cell;
using present::Json;
using present::Table;

void add_spread_columns(Table& table, const std::string& quantity) {
  for (const char* end : {"_min", "_mean", "_max"}) table.columns.push_back({quantity + end, "degC", "", 2});
}

void add_spread(std::vector<Cell>& row, const Spread& spread) {
  for (const double value : {spread.least, spread.mean, spread.most}) row.emplace_back(celsius(value));
}

std::string month_text(const MonthSpan& span) {
  return fmt::format("{:04d}-{:02d}", span.year, span.month);
}

}  // namespace

Table named_year_table(const FluidSummary& summary) {
  Table table{{{"run_year", "", "run-year"},
               {"from", "", "from"},
               {"eft_min", "degC", "least", 2},
               {"eft_mean", "degC", "mean", 2},
               {"eft_max", "degC", "most", 2},
               {"hours", "h", "with flow"}},
              {}};
  for (const int year : named_years(static_cast<int>(summary.years.size()))) {
    const YearFluid& one = summary.years[static_cast<std::size_t>(year - 1)];
    std::vector<Cell> row = {static_cast<long>(year), iso(one.from)};
    add_spread(row, one.eft);
    row.emplace_back(one.eft.hours);
    table.rows.push_back(row);
  }
  return table;
}

Table two_year_table(const FluidSummary& summary) {
  const int last = static_cast<int>(summary.years.size());
  Table table{{{"month", "", "month"}}, {}};
  for (const int year : last > 1 ? std::vector<int>{1, last} : std::vector<int>{1}) {
    for (const char* what : {"least", "mean", "most"})
      table.columns.push_back({"", "degC", fmt::format("{} {}", what, year), 2});
    std::size_t line = 0;
    for (const MonthFluid& month : summary.months) {
      if (month.run_year != year) continue;
      if (year == 1) table.rows.push_back({std::string(month_name(month.span.month))});
      add_spread(table.rows.at(line++), month.eft);
    }
  }
  return table;
}

Source source_of(const record::Header& header, const std::string& file) {
  return {file, header.title, header.start, header.years, header.method, later_starts(header.bores)};
}

Table month_table(const FluidSummary& summary) {
  Table table{{{"run_year", ""}, {"month", ""}, {"hours_with_flow", "h"}}, {}};
  for (const char* quantity : {"eft", "lft", "mean_fluid"}) add_spread_columns(table, quantity);
  for (const MonthFluid& month : summary.months) {
    std::vector<Cell> row = {static_cast<long>(month.run_year), month_text(month.span), month.eft.hours};
    for (const Spread& spread : {month.eft, month.lft, month.mean_fluid}) add_spread(row, spread);
    table.rows.push_back(row);
  }
  append_columns(table, energy_table(summary.energy.months, summary.energy));
  return table;
}

Table year_table(const FluidSummary& summary) {
  Table table{{{"run_year", ""}, {"from", ""}, {"hours_with_flow", "h"}}, {}};
  for (const char* quantity : {"eft", "lft", "mean_fluid"}) add_spread_columns(table, quantity);
  for (const LimitOutcome& outcome : summary.limits) {
    table.columns.push_back({"beyond_" + outcome.limit.name, counted_in(outcome)});
  }
  const bool has_minutes = !summary.minutes.empty();
  if (has_minutes) {
    for (const char* name : {"eft_minute_min", "eft_minute_max"}) table.columns.push_back({name, "degC", "", 2});
  }
  for (const YearFluid& year : summary.years) {
    std::vector<Cell> row = {static_cast<long>(year.run_year), iso(year.from), year.eft.hours};
    for (const Spread& spread : {year.eft, year.lft, year.mean_fluid}) add_spread(row, spread);
    for (const LimitOutcome& outcome : summary.limits) {
      row.emplace_back(outcome.beyond_by_year[static_cast<std::size_t>(year.run_year - 1)]);
    }
    if (has_minutes) {
      const record::MinuteExtremes& minutes = summary.minutes[static_cast<std::size_t>(year.run_year - 1)];
      for (const double value : {minutes.eft_least, minutes.eft_most}) row.emplace_back(celsius(value));
    }
    table.rows.push_back(row);
  }
  append_columns(table, energy_table(summary.energy.years, summary.energy));
  return table;
}

Table duration_table(const FluidSummary& summary) {
  const DurationCurve& curve = summary.duration;
  Table table{{{"share_of_hours_with_flow", "percent"}}, {}};
  for (const int year : curve.run_years) table.columns.push_back({fmt::format("eft_year_{}", year), "degC"});
  for (std::size_t s = 0; s < curve.shares.size(); ++s) {
    std::vector<Cell> row = {std::lround(100 * curve.shares[s])};
    for (const std::vector<double>& eft : curve.eft) row.emplace_back(celsius(eft[s]));
    table.rows.push_back(row);
  }
  return table;
}

std::string eft_text(const Source& source, const FluidSummary& summary, UnitSystem system) {
  const auto shown = [system](const Table& table) { return present::text(present::in_system(table, system)); };
  const int last = static_cast<int>(summary.years.size());
  std::string out = source.title + "\n" + source.file + "\n";
  if (const std::string note = method_note(source.method); !note.empty()) out += note + "\n";
  out += "\n";
  out += "Entering fluid temperature: hourly means of the hours with flow\n";
  out += shown(named_year_table(summary)) + "\n";
  if (summary.limits.empty()) {
    out += "The scenario sets no limits.\n";
  } else {
    out += "Limits, and how often they were left\n" + shown(limit_table(summary.limits, source.start));
  }
  out += minute_text(summary.minutes, source.start, system) + "\n";
  out += last > 1 ? fmt::format("Month by month, run-years 1 and {}\n", last) : "Month by month\n";
  out += shown(two_year_table(summary)) + "\n";
  out += energy_text(summary, system) + "\n";
  out += "Hourly means hide the peaks inside an hour";
  out += summary.minutes.empty() ? ".\n" : ": the minutes above are estimated by one circuit for all.\n";
  return out;
}

Json eft_json(const Source& source, const FluidSummary& summary) {
  return {{"verb", "eft"},
          {"file", source.file},
          {"title", source.title},
          {"method", source.method},
          {"start", iso(source.start)},
          {"years", {{"value", source.years}, {"units", "year"}}},
          {"limits", limit_json(summary.limits, source.start)},
          {"minute", minute_json(summary.minutes, source.start)},
          {"energy", energy_json(summary.energy)},
          {"yearly", present::columns(year_table(summary))},
          {"monthly", present::columns(month_table(summary))},
          {"duration", present::columns(duration_table(summary))}};
}

}  // namespace stillground::results
