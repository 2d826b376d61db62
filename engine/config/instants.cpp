#include "engine/config/instants.hpp"

#include <fmt/format.h>

#include <cmath>
#include <regex>
#include <stdexcept>

#include "engine/base/calendar.hpp"
#include "engine/base/quote.hpp"

namespace stillground::config {
namespace {

/// From midnight of `start` to a date, or to an hour of it [s]. Throws std::invalid_argument that says what is wrong.
double seconds_to(const std::string& text, const Date& start) {
  static const std::regex hour(R"(([\d-]+)[ T](\d{2}):(\d{2}))");
  std::smatch match;
  const bool with_hour = std::regex_match(text, match, hour);
  const Date date = parse_date(with_hour ? match[1].str() : text);
  const int minutes = with_hour ? 60 * std::stoi(match[2]) + std::stoi(match[3]) : 0;
  if (minutes > 24 * 60) throw std::invalid_argument("a day ends at 24:00");
  return static_cast<double>(days_between(start, date)) * seconds_per_day + 60 * minutes;
}

}  // namespace

InstantColumn::InstantColumn(const Csv& csv, const model::Run& run, std::string_view name)
    : csv_(csv), run_(run), column_(csv.find(name)) {
  if (column_ && !csv.columns[*column_].unit.empty()) to_si_ = csv.conversion(*column_, units::Dimension::time);
}

double InstantColumn::seconds(std::size_t row, double otherwise) const {
  if (!column_ || csv_.cell(row, *column_).empty()) return otherwise;
  const Where where = csv_.where(row, *column_);
  const std::string shown = quote(csv_.cell(row, *column_));
  const double raw = raw_seconds(row, where);
  const double value = seconds_per_hour * std::round(raw / seconds_per_hour);
  if (std::abs(value - raw) > 1e-3) where.refuse(shown + " is not a whole number of hours");
  if (value < 0) where.refuse(shown + " is before the run's start");
  if (value >= seconds_per_year * run_.years) where.refuse(shown + " is after the run's end");
  return value;
}

double InstantColumn::raw_seconds(std::size_t row, const Where& where) const {
  const std::string text(csv_.cell(row, *column_));
  if (to_si_) {
    if (text.find('-', 1) == text.npos) return csv_.number(row, *column_, *to_si_);
    where.refuse(fmt::format("{}: dates stand in a column without a unit in its head", quote(text)));
  }
  try {
    return seconds_to(text, run_.start);
  } catch (const std::invalid_argument& fault) {  // a fence: the calendar does not know where the text stands
    where.refuse(fmt::format("{}: {}; with a unit in the column's head it is a time after the run's start", quote(text),
                             fault.what()));
  }
}

}  // namespace stillground::config
