#include "engine/response/superposition.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace stillground::response {

double superposed(const StepResponse& response, std::span<const double> heat_before, long hour) {
  const auto h = static_cast<std::size_t>(hour);
  return response.values[0] * (heat_before[h + 1] - heat_before[h]) + history_term(response, heat_before, hour);
}

double history_term(const StepResponse& response, std::span<const double> heat_before, long hour) {
  const auto before = [&](long h) { return heat_before[static_cast<std::size_t>(std::max(0L, h))]; };
  double sum = 0;
  double later = before(hour);
  for (std::size_t j = 0; j < response.slopes.size() && response.hours[j] < hour; ++j) {
    const double earlier = before(hour - response.hours[j + 1]);
    sum += response.slopes[j] * (later - earlier);
    later = earlier;
  }
  return sum;
}

std::vector<double> superposed(const StepResponse& response, std::span<const double> heat_before) {
  // Knot by knot over a block of hours: the sums before them are then read in order and stay in the cache.
  constexpr long block = 2048;
  const auto hours = static_cast<long>(heat_before.size()) - 1;
  const double* before = heat_before.data();
  std::vector<double> all(static_cast<std::size_t>(hours));
  for (long first = 0; first < hours; first += block) {
    const long end = std::min(first + block, hours);
    double* sum = all.data();
    for (long h = first; h < end; ++h) sum[h] = response.values[0] * (before[h + 1] - before[h]);
    for (std::size_t j = 0; j < response.slopes.size(); ++j) {
      const double slope = response.slopes[j];
      const long near = response.hours[j], far = response.hours[j + 1];
      const long reaches = std::clamp(near, first, end), within = std::clamp(far, first, end);
      for (long h = reaches; h < within; ++h) sum[h] += slope * (before[h - near] - before[0]);
      for (long h = within; h < end; ++h) sum[h] += slope * (before[h - near] - before[h - far]);
    }
  }
  return all;
}

std::vector<double> superposed(std::span<const Sample> samples, double time_constant) {
  std::vector<double> at;
  double rise = 0;
  Sample before;
  for (const Sample& sample : samples) {
    const double x = (sample.time - before.time) / time_constant;
    if (x > 0) {
      const double lost = -std::expm1(-x), late = 1 - lost / x;  // late = x/2 for small x, to some digits
      rise += lost * (before.heat - rise) + (x < 1e-4 ? x / 2 : late) * (sample.heat - before.heat);
    }
    at.push_back(rise);
    before = sample;
  }
  return at;
}

}  // namespace stillground::response
