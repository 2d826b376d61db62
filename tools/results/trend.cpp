#include "tools/results/trend.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

namespace stillground::results {

double slope_per_decade(std::span<const double> yearly) {
  if (yearly.size() < 2) return std::numeric_limits<double>::quiet_NaN();
  const double middle = (static_cast<double>(yearly.size()) - 1) / 2;
  double moment = 0;
  double spread = 0;
  for (std::size_t y = 0; y < yearly.size(); ++y) {
    const double from_middle = static_cast<double>(y) - middle;
    moment += from_middle * yearly[y];
    spread += from_middle * from_middle;
  }
  return 10 * moment / spread;
}

std::vector<double> trends(std::span<const double> yearly) {
  std::vector<double> slopes;
  for (std::size_t n = 1; n <= yearly.size(); ++n) {
    const std::size_t taken = std::min<std::size_t>(n, trend_years);
    slopes.push_back(slope_per_decade(yearly.subspan(n - taken, taken)));
  }
  return slopes;
}

std::optional<int> level_from(std::span<const double> trends) {
  std::optional<int> from;
  for (std::size_t y = trends.size(); y > 0 && std::abs(trends[y - 1]) < level_slope; --y) from = static_cast<int>(y);
  return from;
}

}  // namespace stillground::results
