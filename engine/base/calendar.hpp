#pragma once

#include <array>
#include <string>

namespace stillground {

/// The calendar of every run: CF `noleap`, each year 365 days. No time zone, no daylight saving.
inline constexpr int hours_per_year = 8760;
inline constexpr int days_per_year = 365;
inline constexpr double seconds_per_hour = 3600;
inline constexpr double seconds_per_day = 86400;
inline constexpr double seconds_per_year = 31536000;

/// A day of the noleap calendar; 29 February does not exist.
struct Date {
  int year = 2000;
  int month = 1;  ///< 1..12
  int day = 1;    ///< 1..days of the month

  bool operator==(const Date&) const = default;
};

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

/// "2027-07-01".
std::string iso(const Date& date);

/// "2027-07-01 13:00": the instant `hours` after midnight of `start`.
std::string iso_hour(const Date& start, double hours);

/// Reads "2027-07-01", "2027-07" (its first day) or "2027" (1 January). Throws std::invalid_argument that says what is
/// wrong (not a date, month 13, 29 February in a calendar without leap days).
Date parse_date(const std::string& text);

/// "Jan".."Dec" for 1..12.
const char* month_name(int month);

}  // namespace stillground
