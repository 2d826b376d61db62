#include "tools/present/axis.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

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

int step_of_years(int years) {
  for (const int step : {1, 2, 5, 10, 20, 50}) {
    if (years <= 12 * step || (step == 5 && years <= 40)) return step;
  }
  return 100;
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

Axis run_year_axis(int years) {
  const int step = step_of_years(years);
  Axis axis{"run-year", 0.5, years + 0.5, {{1, "1"}}};
  for (int year = step; year < years; year += step) {
    const bool crowded = year - 1 < step / 2.0 || years - year < step / 2.0;
    if (year > 1 && !crowded) axis.ticks.push_back({static_cast<double>(year), fmt::format("{}", year)});
  }
  if (years > 1) axis.ticks.push_back({static_cast<double>(years), fmt::format("{}", years)});
  return axis;
}

}  // namespace stillground::present
