#include "engine/config/hourly.hpp"

#include <fmt/format.h>

#include "engine/base/quote.hpp"

namespace stillground::config {
namespace {

constexpr std::size_t year_rows = 8760;
constexpr std::size_t leap_year_rows = 8784;
/// No building of ours needs more: beyond it the unit is a slip.
constexpr double largest_power = 1e9;

bool leap_year(int year) {
  return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
}

struct Count {
  std::size_t years = 0;
  std::size_t leap_days = 0;
};

Count count_years(const Csv& csv) {
  const std::size_t n = csv.rows();
  const Count count{n / year_rows, n % year_rows / 24};
  if (count.years > 0 && n == count.years * year_rows + count.leap_days * 24 && count.leap_days <= count.years) {
    return count;
  }
  const std::size_t near = std::max<std::size_t>(1, (n + year_rows / 2) / year_rows);
  const std::size_t off = n > near * year_rows ? n - near * year_rows : near * year_rows - n;
  Where{{csv.file, csv.lines.back(), 0}, ""}.refuse(fmt::format(
      "{} hourly rows end here: whole years of {} rows (or {} with 29 February) are needed, {} too {} for {}", n,
      year_rows, leap_year_rows, off, n > near * year_rows ? "many" : "few",
      near == 1 ? "one year" : fmt::format("{} years", near)));
}

/// Which years of the file, counted from its first row, hold a 29 February.
std::vector<bool> leap_years(const Count& count, const std::optional<Date>& first_row, const Csv& csv,
                             const Where& asked) {
  std::vector<bool> leap(count.years, count.leap_days == count.years);
  if (count.leap_days == 0 || count.leap_days == count.years) return leap;
  const std::string found = fmt::format("{} has {} years with {} leap days", csv.file, count.years, count.leap_days);
  if (!first_row) {
    asked.refuse(found + ": give first_row with the true year (for example \"first_row: 2027-01-01\")");
  }
  const bool after_february = day_of_year(*first_row) >= day_of_year({first_row->year, 3, 1});
  std::size_t expected = 0;
  for (std::size_t i = 0; i < count.years; ++i) {
    leap[i] = leap_year(first_row->year + static_cast<int>(i) + (after_february ? 1 : 0));
    expected += leap[i] ? 1 : 0;
  }
  if (expected != count.leap_days) {
    asked.refuse(fmt::format("{}, the calendar from {} has {}", found, iso(*first_row), expected));
  }
  return leap;
}

}  // namespace

HourlyRows hourly_rows(const Csv& csv, const std::optional<Date>& first_row, const Where& asked) {
  const Count count = count_years(csv);
  const std::vector<bool> leap = leap_years(count, first_row, csv, asked);
  HourlyRows rows;
  rows.leap_days = count.leap_days;
  rows.first_hour = first_row ? hour_of_year(*first_row) : 0;
  const int to_march = hour_of_year({2001, 3, 1}) - rows.first_hour;
  const auto leap_day = static_cast<std::size_t>(to_march > 0 ? to_march : to_march + hours_per_year);
  std::size_t row = 0;
  for (std::size_t year = 0; year < count.years; ++year) {
    for (std::size_t hour = 0; hour < year_rows; ++hour) {
      if (leap[year] && hour == leap_day) row += 24;
      rows.kept.push_back(row++);
    }
    // A year that begins on 1 March has its leap day at the end.
    if (leap[year] && leap_day == year_rows) row += 24;
  }
  return rows;
}

model::HourlySeries hourly_series(const Csv& csv, const HourlyRows& rows, const std::string& name, const Where& asked,
                                  double least) {
  const std::size_t column = csv.need(name, asked);
  const units::Conversion to_watt = csv.conversion(column, units::Dimension::power);
  model::HourlySeries series;
  series.first_hour = rows.first_hour;
  series.values.reserve(rows.kept.size());
  for (const std::size_t row : rows.kept) {
    const double value = csv.number(row, column, to_watt);
    if (value < least || value > largest_power) {
      const std::string allowed = least == 0 ? "0 to 1000 MW; the column says the direction" : "-1000 MW to 1000 MW";
      csv.where(row, column)
          .refuse(fmt::format("{} is out of range (allowed: {})", quote(csv.cell(row, column)), allowed));
    }
    series.values.push_back(value);
  }
  return series;
}

}  // namespace stillground::config
