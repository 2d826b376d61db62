#include "engine/base/calendar.hpp"

#include <fmt/format.h>

#include <cmath>
#include <regex>
#include <stdexcept>

namespace stillground {

int day_of_year(const Date& date) {
  int days = date.day - 1;
  for (int m = 1; m < date.month; ++m) days += days_of_month[static_cast<std::size_t>(m - 1)];
  return days;
}

int hour_of_year(const Date& date) {
  return 24 * day_of_year(date);
}

long days_between(const Date& from, const Date& to) {
  return static_cast<long>(days_per_year) * (to.year - from.year) + day_of_year(to) - day_of_year(from);
}

Date plus_days(const Date& date, long days) {
  long total = static_cast<long>(days_per_year) * date.year + day_of_year(date) + days;
  long year = total / days_per_year;
  long rest = total % days_per_year;
  if (rest < 0) {
    rest += days_per_year;
    --year;
  }
  Date result{static_cast<int>(year), 1, 1};
  while (rest >= days_of_month[static_cast<std::size_t>(result.month - 1)]) {
    rest -= days_of_month[static_cast<std::size_t>(result.month - 1)];
    ++result.month;
  }
  result.day = static_cast<int>(rest) + 1;
  return result;
}

std::string iso(const Date& date) {
  return fmt::format("{:04d}-{:02d}-{:02d}", date.year, date.month, date.day);
}

std::string iso_hour(const Date& start, double hours) {
  const long minutes = std::lround(hours * 60);
  const long day = minutes >= 0 ? minutes / 1440 : -((-minutes + 1439) / 1440);
  const long rest = minutes - 1440 * day;
  return fmt::format("{} {:02d}:{:02d}", iso(plus_days(start, day)), rest / 60, rest % 60);
}

Date parse_date(const std::string& text) {
  static const std::regex pattern(R"((\d{4})(?:-(\d{1,2})(?:-(\d{1,2}))?)?)");
  std::smatch match;
  if (!std::regex_match(text, match, pattern))
    throw std::invalid_argument("not a date (write 2027, 2027-07 or 2027-07-01)");
  Date date{std::stoi(match[1]), match[2].matched ? std::stoi(match[2]) : 1,
            match[3].matched ? std::stoi(match[3]) : 1};
  if (date.month < 1 || date.month > 12)
    throw std::invalid_argument(fmt::format("month {} does not exist", date.month));
  if (date.month == 2 && date.day == 29) {
    throw std::invalid_argument("29 February is not in the run's calendar (every year has 365 days)");
  }
  if (date.day < 1 || date.day > days_of_month[static_cast<std::size_t>(date.month - 1)]) {
    throw std::invalid_argument(fmt::format("{} {} does not exist", month_name(date.month), date.day));
  }
  return date;
}

const char* month_name(int month) {
  static constexpr std::array<const char*, 12> names = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                        "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  return names.at(static_cast<std::size_t>(month - 1));
}

}  // namespace stillground
