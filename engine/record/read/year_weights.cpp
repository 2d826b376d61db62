#include "engine/record/read/year_weights.hpp"

#include <algorithm>
#include <stdexcept>

#include "engine/base/calendar.hpp"

namespace stillground::record::read {

std::vector<SnapshotWeight> year_weights(std::span<const double> times, int y) {
  const double begin = y * seconds_per_year, end = begin + seconds_per_year;
  if (times.empty() || times.front() > begin || times.back() < end) {
    throw std::out_of_range("the snapshots do not reach over the run-year");
  }
  std::vector<double> weights(times.size(), 0);
  for (std::size_t s = 0; s + 1 < times.size(); ++s) {
    const double a = std::max(begin, times[s]), b = std::min(end, times[s + 1]);
    if (b <= a) continue;
    // The part's mean is the line's value at its middle.
    const double share = ((a + b) / 2 - times[s]) / (times[s + 1] - times[s]);
    weights[s] += (1 - share) * (b - a) / seconds_per_year;
    weights[s + 1] += share * (b - a) / seconds_per_year;
  }
  std::vector<SnapshotWeight> used;
  for (std::size_t s = 0; s < weights.size(); ++s) {
    if (weights[s] > 0) used.push_back({s, weights[s]});
  }
  return used;
}

}  // namespace stillground::record::read
