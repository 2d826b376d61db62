#include "tools/results/months.hpp"

#include <algorithm>

namespace stillground::results {

std::vector<MonthSpan> months_between(const Date& start, std::size_t first, std::size_t last) {
  std::vector<MonthSpan> months;
  for (std::size_t hour = first; hour < last;) {
    const Date today = plus_days(start, static_cast<long>(hour / 24));
    const auto hours_gone = 24 * static_cast<std::size_t>(today.day - 1) + hour % 24;
    const auto hours_of_month = 24 * static_cast<std::size_t>(days_of_month[static_cast<std::size_t>(today.month - 1)]);
    const std::size_t end = std::min(last, hour + (hours_of_month - hours_gone));
    months.push_back({today.year, today.month, hour, end, end - hour == hours_of_month});
    hour = end;
  }
  return months;
}

std::size_t first_hour_of(int run_year) {
  return static_cast<std::size_t>(hours_per_year) * static_cast<std::size_t>(run_year - 1);
}

int run_year_of(std::size_t hour) {
  return static_cast<int>(hour / static_cast<std::size_t>(hours_per_year)) + 1;
}

Date first_day_of(const Date& start, int run_year) {
  return plus_days(start, static_cast<long>(days_per_year) * (run_year - 1));
}

std::vector<int> named_years(int years) {
  std::vector<int> named;
  for (const int year : {1, 5, 10, years}) {
    if (year <= years && std::find(named.begin(), named.end(), year) == named.end()) named.push_back(year);
  }
  std::sort(named.begin(), named.end());
  return named;
}

}  // namespace stillground::results
