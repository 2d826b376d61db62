#include "validation/harness/line_source_reading.hpp"

#include <cmath>
#include <cstddef>
#include <numbers>

#include "engine/base/calendar.hpp"

namespace stillground::validation {

Reading read_line_source(const std::vector<double>& rise, int first, double heat, double capacity, double radius) {
  double n = 0, x = 0, y = 0, xx = 0, xy = 0;
  for (std::size_t hour = static_cast<std::size_t>(first); hour < rise.size(); ++hour) {
    const double ln_t = std::log((static_cast<double>(hour) + 0.5) * seconds_per_hour);
    n += 1, x += ln_t, y += rise[hour], xx += ln_t * ln_t, xy += ln_t * rise[hour];
  }
  const double slope = (n * xy - x * y) / (n * xx - x * x);
  const double at_one_second = (y - slope * x) / n;
  const double k = heat / (4 * std::numbers::pi * slope);
  const double line =
      (std::log(4 * k / capacity / (radius * radius)) - std::numbers::egamma) / (4 * std::numbers::pi * k);
  return {k, at_one_second / heat - line};
}

}  // namespace stillground::validation
