#include "tools/results/limits.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

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

}  // namespace

LimitOutcome judge(const record::LimitRow& limit, std::span<const record::Hour> hours, const Date& start) {
  LimitOutcome outcome;
  outcome.limit = limit;
  outcome.by_month = limit.over == "month";
  outcome.beyond_by_year.assign(hours.empty() ? 0 : static_cast<std::size_t>(run_year_of(hours.size() - 1)), 0);
  outcome.closest = std::numeric_limits<double>::quiet_NaN();
  const Quantity quantity = quantity_of(limit.quantity);
  const double side = limit.is_least ? -1 : 1;
  for (const Judged& one : outcome.by_month ? judged_months(hours, quantity, start) : judged_hours(hours, quantity)) {
    ++outcome.judged;
    if (std::isnan(outcome.closest) || side * one.value > side * outcome.closest) outcome.closest = one.value;
    if (side * one.value <= side * limit.value) continue;
    ++outcome.beyond;
    ++outcome.beyond_by_year[static_cast<std::size_t>(run_year_of(one.first_hour) - 1)];
    if (!outcome.first_beyond) outcome.first_beyond = one.first_hour;
  }
  return outcome;
}

std::vector<LimitOutcome> judge_all(const record::Header& header, std::span<const record::Hour> hours) {
  std::vector<LimitOutcome> outcomes;
  for (const record::LimitRow& limit : header.limits) outcomes.push_back(judge(limit, hours, header.start));
  return outcomes;
}

}  // namespace stillground::results
