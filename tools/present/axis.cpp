#include "tools/present/axis.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "tools/present/labels.hpp"
#include "tools/present/table.hpp"

namespace stillground::present {

namespace {

double round_step(double least) {
  const double power = std::pow(10, std::floor(std::log10(least)));
  for (const double factor : {1.0, 2.0, 5.0}) {
    if (factor * power >= least * (1 - 1e-9)) return factor * power;
  }
  return 10 * power;
}

/// From one named run-year to the next, where a name takes `share` of the axis.
int step_of_years(int years, double share) {
  for (const int step : {1, 2, 5, 10, 20, 50}) {
    if (step >= share * years) return step;
  }
  return 100;
}

bool starts_a_year(const Date& start) {
  return start.month == 1 && start.day == 1;
}

}  // namespace

void Range::add(double value) {
  if (!std::isfinite(value)) return;
  const bool first = empty();
  low_ = first ? value : std::min(low_, value);
  high_ = first ? value : std::max(high_, value);
}

void Range::add(const std::vector<double>& values) {
  for (const double value : values) add(value);
}

Axis round_axis(const std::string& label, const Range& range, int intervals) {
  Range about = range;
  if (about.empty()) about.add(0);
  if (about.span() < 1e-9 * std::max(1.0, std::abs(about.high()))) {
    const double middle = about.low();
    about.add(middle - 0.5);
    about.add(middle + 0.5);
  }
  const double step = round_step(about.span() / intervals);
  const double first = std::floor(about.low() / step + 1e-9);
  const double last = std::ceil(about.high() / step - 1e-9);
  const int digits = std::max(0, -static_cast<int>(std::floor(std::log10(step) + 1e-9)));
  Axis axis{label, first * step, last * step, {}};
  for (double i = first; i <= last; ++i) axis.ticks.push_back({i * step, fixed(i * step, digits)});
  return axis;
}

Axis decade_axis(const std::string& label, const Range& logarithms) {
  Range about = logarithms;
  if (about.empty()) about.add(0);
  const double first = std::floor(about.low() + 1e-9);
  const double last = std::max(first + 1, std::ceil(about.high() - 1e-9));
  Axis axis{label, first, last, {}};
  const double step = std::ceil((last - first) / 10);
  for (double power = first; power <= last; power += step) {
    axis.ticks.push_back({power, fmt::format("{:g}", std::pow(10, power))});
  }
  return axis;
}

Range with_room(const Range& range, double share) {
  Range wider = range;
  if (range.empty()) return wider;
  wider.add(range.low() - share * range.span());
  wider.add(range.high() + share * range.span());
  return wider;
}

std::string calendar_years(const Date& start, int run_year) {
  const int year = start.year + run_year - 1;  // every year has 365 days: run-years start on one day of the calendar
  return starts_a_year(start) ? fmt::format("{}", year) : fmt::format("{}/{:02d}", year, (year + 1) % 100);
}

Axis run_year_axis(int years, const std::optional<Date>& start) {
  constexpr double least_width = 570;  // [px], with letters of 17 px
  const double share = start ? text_width(calendar_years(*start, 1), 17) / least_width : 1.0 / 12;
  const int step = step_of_years(years, share);
  const double nearest = std::max(share * years, step / 2.0);
  Axis axis{"run-year", 0.5, years + 0.5, {}};
  if (start) axis.label += starts_a_year(*start) ? ", calendar year" : ", calendar years";
  const auto add = [&](int year) {
    axis.ticks.push_back(
        {static_cast<double>(year), fmt::format("{}", year), start ? calendar_years(*start, year) : ""});
  };
  add(1);
  for (int year = step; year < years; year += step) {
    if (year > 1 && year - 1 >= nearest && years - year >= nearest) add(year);
  }
  if (years > 1) add(years);
  return axis;
}

}  // namespace stillground::present
