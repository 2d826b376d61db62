#include "engine/response/step_response.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

namespace stillground::response {

StepResponse::StepResponse(std::vector<long> hours, std::vector<double> values)
    : hours_(std::move(hours)), values_(std::move(values)) {
  for (std::size_t j = 0; j + 1 < hours_.size(); ++j) {
    slopes_.push_back((values_[j + 1] - values_[j]) / static_cast<double>(hours_[j + 1] - hours_[j]));
  }
}

double StepResponse::after(long n) const {
  const auto above = std::upper_bound(hours_.begin(), hours_.end(), n);
  if (above == hours_.end()) return values_.back();
  const auto j = static_cast<std::size_t>(above - hours_.begin()) - 1;
  return values_[j] + slopes_[j] * static_cast<double>(n - hours_[j]);
}

double StepResponse::superposed(std::span<const double> heat_before, long hour) const {
  const auto h = static_cast<std::size_t>(hour);
  return values_[0] * (heat_before[h + 1] - heat_before[h]) + left_over(heat_before, hour);
}

double StepResponse::left_over(std::span<const double> heat_before, long hour) const {
  const auto before = [&](long h) { return heat_before[static_cast<std::size_t>(std::max(0L, h))]; };
  double sum = 0;
  double later = before(hour);
  for (std::size_t j = 0; j < slopes_.size() && hours_[j] < hour; ++j) {
    const double earlier = before(hour - hours_[j + 1]);
    sum += slopes_[j] * (later - earlier);
    later = earlier;
  }
  return sum;
}

std::vector<double> StepResponse::superposed(std::span<const double> heat_before) const {
  // Knot by knot over a block of hours: the sums before them are then read in order and stay in the cache.
  constexpr long block = 2048;
  const auto hours = static_cast<long>(heat_before.size()) - 1;
  const double* before = heat_before.data();
  std::vector<double> all(static_cast<std::size_t>(hours));
  for (long first = 0; first < hours; first += block) {
    const long past = std::min(first + block, hours);
    double* sum = all.data();
    for (long h = first; h < past; ++h) sum[h] = values_[0] * (before[h + 1] - before[h]);
    for (std::size_t j = 0; j < slopes_.size(); ++j) {
      const double slope = slopes_[j];
      const long near = hours_[j], far = hours_[j + 1];
      const long reaches = std::clamp(near, first, past), within = std::clamp(far, first, past);
      for (long h = reaches; h < within; ++h) sum[h] += slope * (before[h - near] - before[0]);
      for (long h = within; h < past; ++h) sum[h] += slope * (before[h - near] - before[h - far]);
    }
  }
  return all;
}

}  // namespace stillground::response
