#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace stillground::record::read {

/// A snapshot and its share in a mean over time.
struct SnapshotWeight {
  std::size_t snapshot = 0;
  double weight = 0;
};

/// Weights of the trapezoid rule for the mean over run-year `y` (0-based): of the curve that is straight between the
/// snapshots. Where the run-year begins or ends between two snapshots (a run that starts within a month), the straight
/// line is cut there. `times` rise [s] and must reach over the run-year, else std::out_of_range. The weights sum to 1.
std::vector<SnapshotWeight> year_weights(std::span<const double> times, int y);

}  // namespace stillground::record::read
