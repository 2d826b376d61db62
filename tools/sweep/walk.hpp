#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "tools/sweep/plan.hpp"

namespace stillground::sweep {

/// The points of a plan, numbered from 1: crossed axes as nested loops, the last axis innermost; paired ones side by
/// side. The plan must outlive it.
class Walk {
 public:
  /// Throws InputError for more than most_points points, with their number, and for paired axes of unequal length.
  explicit Walk(const Plan& plan);

  std::size_t count() const { return count_; }

  /// Which value of each axis point `number` has.
  std::vector<std::size_t> choice(std::size_t number) const;

  std::vector<config::Override> overrides(const std::vector<std::size_t>& choice) const;

  /// The first point whose bores stand, reach and lie in the same ground as this one's: its response serves them all.
  std::size_t middle(std::size_t number) const { return middles_[number - 1]; }

  /// How many points a middle serves.
  std::size_t served_by(std::size_t middle) const { return served_[middle - 1]; }

 private:
  void find_middles();

  const Plan& plan_;
  std::size_t count_ = 0;
  std::vector<std::size_t> middles_, served_;  // [number - 1]
};

/// Whether points that differ in this key alone share one geometry, and with it one step response.
bool keeps_geometry(const std::string& path);

}  // namespace stillground::sweep
