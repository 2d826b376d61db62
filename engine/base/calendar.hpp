#pragma once

#include <stillground/date.hpp>

#include <array>
#include <string>

namespace stillground {

/// The calendar is that of <stillground/date.hpp>: each year 365 days.
inline constexpr int days_per_year = 365;
inline constexpr double seconds_per_hour = 3600;
inline constexpr double seconds_per_day = 86400;
inline constexpr double seconds_per_year = 31536000;

/// Days of each month in a noleap year.
inline constexpr std::array<int, 12> days_of_month = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

/// Days from 1 January to the date: 0..364.
int day_of_year(const Date& date);

/// Hours from the start of the date's year to the date's midnight.
int hour_of_year(const Date& date);

/// Days from `from` to `to`, negative if `to` is earlier.
long days_between(const Date& from, const Date& to);

/// The date `days` after `date` (may be negative).
Date plus_days(const Date& date, long days);

/// Reads "2027-07-01", "2027-07" (its first day) or "2027" (1 January). Throws std::invalid_argument that says what is
/// wrong (not a date, month 13, 29 February in a calendar without leap days).
Date parse_date(const std::string& text);

/// "Jan".."Dec" for 1..12.
const char* month_name(int month);

}  // namespace stillground
