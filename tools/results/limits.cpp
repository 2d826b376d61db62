#include "tools/results/limits.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "tools/results/fluid.hpp"
#include "tools/results/months.hpp"

namespace stillground::results {

namespace {

/// A value that counts, and the first hour of its period.
struct Judged {
  std::size_t first_hour = 0;
  double value = 0;
};

std::vector<Judged> judged_hours(std::span<const record::Hour> hours, Quantity quantity) {
  std::vector<Judged> list;
  for (std::size_t h = 0; h < hours.size(); ++h) {
    if (flows(hours[h])) list.push_back({h, value_of(hours[h], quantity)});
  }
  return list;
}

std::vector<Judged> judged_months(std::span<const record::Hour> hours, Quantity quantity, const Date& start) {
  std::vector<Judged> list;
  for (const MonthSpan& month : months_between(start, 0, hours.size())) {
    const Spread spread = spread_of(hours.subspan(month.first, month.last - month.first), quantity);
    if (month.whole && spread.hours > 0) list.push_back({month.first, spread.mean});
  }
  return list;
}

std::vector<Judged> judged_minutes(std::span<const record::MinuteExtremes> years, bool is_least) {
  std::vector<Judged> list;
  for (const record::MinuteExtremes& year : years) {
    const long hour = is_least ? year.hour_least : year.hour_most;
    if (hour >= 0) list.push_back({static_cast<std::size_t>(hour), is_least ? year.eft_least : year.eft_most});
  }
  return list;
}

std::vector<Judged> judged_by(const record::LimitRow& limit, std::span<const record::Hour> hours, const Date& start,
                              std::span<const record::MinuteExtremes> minutes) {
  const Quantity quantity = quantity_of(limit.quantity);
  if (limit.over == "minute") return judged_minutes(minutes, limit.is_least);
  return limit.over == "month" ? judged_months(hours, quantity, start) : judged_hours(hours, quantity);
}

bool is_beyond(const record::LimitRow& limit, double value) {
  return limit.is_least ? value < limit.value : value > limit.value;
}

}  // namespace

LimitOutcome judge(const record::LimitRow& limit, std::span<const record::Hour> hours, const Date& start,
                   std::span<const record::MinuteExtremes> minutes) {
  LimitOutcome outcome;
  outcome.limit = limit;
  outcome.by_month = limit.over == "month";
  outcome.by_minute = limit.over == "minute";
  outcome.beyond_by_year.assign(hours.empty() ? 0 : static_cast<std::size_t>(run_year_of(hours.size() - 1)), 0);
  outcome.closest = std::numeric_limits<double>::quiet_NaN();
  outcome.closest_by_year.assign(outcome.beyond_by_year.size(), outcome.closest);
  const double side = limit.is_least ? -1 : 1;
  for (const Judged& one : judged_by(limit, hours, start, minutes)) {
    ++outcome.judged;
    const auto year = static_cast<std::size_t>(run_year_of(one.first_hour) - 1);
    const auto closer = [&](double closest) { return std::isnan(closest) || side * one.value > side * closest; };
    if (closer(outcome.closest)) {
      outcome.closest = one.value;
      outcome.closest_at = one.first_hour;
    }
    if (double& closest = outcome.closest_by_year[year]; closer(closest)) closest = one.value;
    if (!is_beyond(limit, one.value)) continue;
    ++outcome.beyond;
    ++outcome.beyond_by_year[year];
    if (!outcome.first_beyond) outcome.first_beyond = one.first_hour;
  }
  return outcome;
}

std::vector<LimitOutcome> judge_all(const record::Header& header, std::span<const record::Hour> hours,
                                    std::span<const record::MinuteExtremes> minutes) {
  std::vector<LimitOutcome> outcomes;
  for (const record::LimitRow& limit : header.limits) outcomes.push_back(judge(limit, hours, header.start, minutes));
  return outcomes;
}

bool has_limit(const std::vector<LimitOutcome>& outcomes, const std::string& over) {
  return std::any_of(outcomes.begin(), outcomes.end(),
                     [&](const LimitOutcome& outcome) { return outcome.limit.over == over; });
}

const LimitOutcome* first_broken(const std::vector<LimitOutcome>& outcomes) {
  const LimitOutcome* first = nullptr;
  for (const LimitOutcome& outcome : outcomes) {
    if (outcome.first_beyond && (first == nullptr || *outcome.first_beyond < *first->first_beyond)) first = &outcome;
  }
  return first;
}

std::optional<int> first_year_beyond(const std::vector<LimitOutcome>& outcomes) {
  const LimitOutcome* first = first_broken(outcomes);
  return first != nullptr ? std::optional<int>(run_year_of(*first->first_beyond)) : std::nullopt;
}

const LimitOutcome* nearest(const std::vector<LimitOutcome>& outcomes) {
  const LimitOutcome* found = nullptr;
  for (const LimitOutcome& outcome : outcomes) {
    if (std::isnan(outcome.margin())) continue;
    if (found == nullptr || outcome.margin() < found->margin()) found = &outcome;
  }
  return found;
}

double margin_of(const std::vector<LimitOutcome>& outcomes) {
  const LimitOutcome* found = nearest(outcomes);
  return found != nullptr ? found->margin() : std::numeric_limits<double>::quiet_NaN();
}

long periods_beyond(const record::Header& header, std::span<const record::Hour> hours, bool by_month) {
  std::set<std::size_t> beyond;
  for (const record::LimitRow& limit : header.limits) {
    if (limit.over != (by_month ? "month" : "hour")) continue;
    for (const Judged& one : judged_by(limit, hours, header.start, {})) {
      if (is_beyond(limit, one.value)) beyond.insert(one.first_hour);
    }
  }
  return static_cast<long>(beyond.size());
}

long minute_years_beyond(const std::vector<LimitOutcome>& outcomes) {
  std::set<std::size_t> beyond;
  for (const LimitOutcome& outcome : outcomes) {
    if (!outcome.by_minute) continue;
    for (std::size_t year = 0; year < outcome.beyond_by_year.size(); ++year) {
      if (outcome.beyond_by_year[year] > 0) beyond.insert(year);
    }
  }
  return static_cast<long>(beyond.size());
}

}  // namespace stillground::results
