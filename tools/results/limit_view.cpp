#include "tools/results/limit_view.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>

#include "engine/base/hour_span.hpp"
#include "tools/present/palette.hpp"
#include "tools/results/celsius.hpp"
#include "tools/results/months.hpp"

namespace stillground::results {

namespace {

constexpr double near_enough = 0.35;  ///< of the data's span: how far off a limit may lie and still be drawn

std::string spoken(const LimitOutcome& outcome, const TemperatureScale& scale) {
  return fmt::format("{} allowed{}{}", outcome.limit.is_least ? "least" : "most",
                     outcome.by_month    ? ",\nmonth: "
                     : outcome.by_minute ? ",\nminute: "
                                         : "\n",
                     scale.plain(outcome.limit.value));
}

}  // namespace

std::string counted_in(const LimitOutcome& outcome) {
  return outcome.by_month ? "months" : outcome.by_minute ? "years" : "h";
}

std::string first_beyond_text(const LimitOutcome& outcome, const Date& start) {
  if (!outcome.first_beyond) return outcome.judged > 0 ? "kept" : "not judged";
  const std::string hour = hour_span(start, static_cast<long>(*outcome.first_beyond));
  return outcome.by_month ? hour.substr(0, 7) : hour;
}

present::Table limit_table(const std::vector<LimitOutcome>& outcomes, const Date& start) {
  present::Table table{{{"limit", "", "limit"},
                        {"value", "degC", "value", 2},
                        {"over", "", "judged by"},
                        {"closest", "degC", "came to", 2},
                        {"first_beyond", "", "first beyond"},
                        {"run_year", "", "run-year"}},
                       {}};
  const int years = outcomes.empty() ? 0 : static_cast<int>(outcomes.front().beyond_by_year.size());
  const std::vector<int> named = named_years(years);
  for (const int year : named) table.columns.push_back({"", "", fmt::format("year {}", year)});
  table.columns.push_back({"", "", "all years"});
  table.columns.push_back({"", "", "beyond"});
  for (const LimitOutcome& outcome : outcomes) {
    std::vector<present::Cell> row = {outcome.limit.name, celsius(outcome.limit.value), outcome.limit.over,
                                      celsius(outcome.closest), first_beyond_text(outcome, start)};
    row.emplace_back();
    if (outcome.first_beyond) row.back() = static_cast<long>(run_year_of(*outcome.first_beyond));
    for (const int year : named) row.emplace_back(outcome.beyond_by_year[static_cast<std::size_t>(year - 1)]);
    row.emplace_back(outcome.beyond);
    row.emplace_back(counted_in(outcome));
    table.rows.push_back(row);
  }
  return table;
}

present::Json limit_json(const std::vector<LimitOutcome>& outcomes, const Date& start) {
  present::Json list = present::Json::array();
  for (const LimitOutcome& outcome : outcomes) {
    present::Json one = {{"name", outcome.limit.name},
                         {"quantity", outcome.limit.quantity},
                         {"over", outcome.limit.over},
                         {"value", present::number(celsius(outcome.limit.value))},
                         {"units", "degC"},
                         {"kept", outcome.judged > 0 ? present::Json(outcome.kept()) : present::Json(nullptr)},
                         {"closest", present::quantity(celsius(outcome.closest), "degC")},
                         {"judged", {{"value", outcome.judged}, {"units", counted_in(outcome)}}},
                         {"beyond", {{"value", outcome.beyond}, {"units", counted_in(outcome)}}},
                         {"beyond_by_year", {{"units", counted_in(outcome)}, {"values", outcome.beyond_by_year}}},
                         {"first_beyond", nullptr},
                         {"first_year_beyond", nullptr}};
    if (outcome.first_beyond) {
      // As the result's own record of that hour, or of the month's first, has it: its end.
      const auto time = static_cast<double>(*outcome.first_beyond + 1);
      one["first_beyond"] = {{"date", iso_hour(start, time)},
                             {"time", {{"value", time}, {"units", "hours since " + iso(start) + " 00:00:00"}}}};
      one["first_year_beyond"] = run_year_of(*outcome.first_beyond);
    }
    list.push_back(one);
  }
  return list;
}

std::string first_beyond_day(const LimitOutcome& outcome, const Date& start) {
  return first_beyond_text(outcome, start).substr(0, 10);
}

std::string name_of(Quantity quantity) {
  switch (quantity) {
    case Quantity::eft:
      return "EFT";
    case Quantity::lft:
      return "LFT";
    case Quantity::mean_fluid:
      return "mean fluid temperature";
  }
  return "";
}

std::string first_broken_text(const std::vector<LimitOutcome>& outcomes, const Date& start,
                              const TemperatureScale& scale) {
  if (outcomes.empty()) return "The scenario sets no limits.";
  if (const LimitOutcome* first = first_broken(outcomes)) {
    return fmt::format("First beyond a limit {} {}, in run-year {}: the {} {}{} allowed is {}.",
                       first->by_month ? "in" : "on", first_beyond_day(*first, start),
                       run_year_of(*first->first_beyond), first->limit.is_least ? "least" : "greatest",
                       first->by_month    ? "monthly mean of the "
                       : first->by_minute ? "minute's "
                                          : "",
                       name_of(quantity_of(first->limit.quantity)), scale.plain(first->limit.value));
  }
  const bool judged = std::any_of(outcomes.begin(), outcomes.end(), [](const auto& one) { return one.judged > 0; });
  return judged ? "All limits are kept." : "No limit could be judged: no hour had flow.";
}

std::vector<present::Level> limit_levels(const std::vector<LimitOutcome>& outcomes, Quantity quantity,
                                         const TemperatureScale& scale, present::Range& range) {
  const double reach = near_enough * range.span();
  const double low = range.low() - reach;
  const double high = range.high() + reach;
  std::vector<present::Level> levels;
  for (const LimitOutcome& outcome : outcomes) {
    if (quantity_of(outcome.limit.quantity) != quantity) continue;
    const double value = scale(outcome.limit.value);
    if (range.empty() || (value >= low && value <= high)) range.add(value);
    levels.push_back({value, present::limit_stroke, spoken(outcome, scale)});
  }
  return levels;
}

}  // namespace stillground::results
