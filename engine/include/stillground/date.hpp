#pragma once

#include <stillground/export.hpp>

#include <string>

namespace stillground {

/// The calendar of every run: CF `noleap`, each year 365 days. No time zone, no daylight saving.
inline constexpr int hours_per_year = 8760;

/// A day of the noleap calendar; 29 February does not exist.
struct Date {
  int year = 2000;
  int month = 1;  ///< 1..12
  int day = 1;    ///< 1..days of the month

  bool operator==(const Date&) const = default;
};

/// "2027-07-01".
STILLGROUND_EXPORT std::string iso(const Date& date);

/// "2027-07-01 13:00": the instant `hours` after midnight of `start`.
STILLGROUND_EXPORT std::string iso_hour(const Date& start, double hours);

}  // namespace stillground
