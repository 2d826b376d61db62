#include "engine/run/kernel.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

namespace stillground::run {

Kernel::Kernel(std::vector<long> hours, std::vector<double> values)
    : hours_(std::move(hours)), values_(std::move(values)) {
  for (std::size_t j = 0; j + 1 < hours_.size(); ++j) {
    slopes_.push_back((values_[j + 1] - values_[j]) / static_cast<double>(hours_[j + 1] - hours_[j]));
  }
}

double Kernel::after(long n) const {
  const auto above = std::upper_bound(hours_.begin(), hours_.end(), n);
  if (above == hours_.end()) return values_.back();
  const auto j = static_cast<std::size_t>(above - hours_.begin()) - 1;
  return values_[j] + slopes_[j] * static_cast<double>(n - hours_[j]);
}

double Kernel::superposed(std::span<const double> heat_before, long hour) const {
  const auto before = [&](long h) { return heat_before[static_cast<std::size_t>(std::max(0L, h))]; };
  double sum = values_[0] * (before(hour + 1) - before(hour));
  double later = before(hour);
  for (std::size_t j = 0; j < slopes_.size() && hours_[j] < hour; ++j) {
    const double earlier = before(hour - hours_[j + 1]);
    sum += slopes_[j] * (later - earlier);
    later = earlier;
  }
  return sum;
}

}  // namespace stillground::run
