#pragma once

#include <cstddef>
#include <vector>

#include "engine/base/calendar.hpp"

namespace stillground::results {

/// A calendar month, or the part of it that a stretch of hours holds.
struct MonthSpan {
  int year = 0;           ///< of the calendar
  int month = 0;          ///< 1..12
  std::size_t first = 0;  ///< its first hour since the run's start
  std::size_t last = 0;   ///< one past its last
  bool whole = false;     ///< no hour of the month is outside the stretch
};

/// The calendar months of the hours [first, last) of a run that starts at midnight of `start`, in their order. The
/// first and the last may be cut.
std::vector<MonthSpan> months_between(const Date& start, std::size_t first, std::size_t last);

/// The first hour of run-year n (from 1), 8760 (n - 1).
std::size_t first_hour_of(int run_year);

/// The run-year (from 1) of an hour since the start.
int run_year_of(std::size_t hour);

/// The date on which run-year n starts.
Date first_day_of(const Date& start, int run_year);

/// The run-years that a summary names: first, fifth, tenth and last, those that exist, without repeats.
std::vector<int> named_years(int years);

}  // namespace stillground::results
