#include "tools/results/fluid.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

#include "engine/base/errors.hpp"

namespace stillground::results {

namespace {

constexpr double nothing = std::numeric_limits<double>::quiet_NaN();

}  // namespace

Quantity quantity_of(const std::string& name) {
  if (name == "eft") return Quantity::eft;
  if (name == "lft") return Quantity::lft;
  if (name == "mean_fluid") return Quantity::mean_fluid;
  throw InputError("the result limits \"" + name + "\", which this program does not know (eft, lft, mean_fluid)");
}

double value_of(const record::Hour& hour, Quantity quantity) {
  switch (quantity) {
    case Quantity::eft:
      return hour.eft;
    case Quantity::lft:
      return hour.lft;
    case Quantity::mean_fluid:
      return (hour.eft + hour.lft) / 2;
  }
  return nothing;
}

bool flows(const record::Hour& hour) {
  return hour.flow > 0;
}

Spread spread_of(std::span<const record::Hour> hours, Quantity quantity) {
  Spread spread{nothing, nothing, nothing, 0};
  double sum = 0;
  for (const record::Hour& hour : hours) {
    if (!flows(hour)) continue;
    const double value = value_of(hour, quantity);
    spread.least = spread.hours == 0 ? value : std::min(spread.least, value);
    spread.most = spread.hours == 0 ? value : std::max(spread.most, value);
    sum += value;
    ++spread.hours;
  }
  if (spread.hours > 0) spread.mean = sum / static_cast<double>(spread.hours);
  return spread;
}

std::vector<double> duration_curve(std::span<const record::Hour> hours, Quantity quantity,
                                   std::span<const double> shares) {
  std::vector<double> sorted;
  for (const record::Hour& hour : hours) {
    if (flows(hour)) sorted.push_back(value_of(hour, quantity));
  }
  if (sorted.empty()) return std::vector<double>(shares.size(), nothing);
  std::sort(sorted.begin(), sorted.end());
  std::vector<double> curve;
  for (const double share : shares) {
    const double at = share * static_cast<double>(sorted.size() - 1);
    const auto below = static_cast<std::size_t>(at);
    const std::size_t above = std::min(below + 1, sorted.size() - 1);
    curve.push_back(sorted[below] + (at - static_cast<double>(below)) * (sorted[above] - sorted[below]));
  }
  return curve;
}

}  // namespace stillground::results
