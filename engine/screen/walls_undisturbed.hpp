#pragma once

#include <span>
#include <vector>

#include "engine/assembly/assembly.hpp"

namespace stillground::screen {

/// The undisturbed ground at every piece of a bore's wall (response/pieces.hpp), mean over the field's metres of it:
/// straight between midnights.
class WallsUndisturbed {
 public:
  /// `assembly` must outlive it.
  WallsUndisturbed(const assembly::Assembly& assembly, std::span<const double> parts);

  /// Call for every day of the run, from 0 on, before at() is asked for an hour of it.
  void begin_day(long day);

  /// [K]; `part` of the day gone by, 0..1.
  double at(std::size_t piece, double part) const { return today_[piece] + part * (tomorrow_[piece] - today_[piece]); }

  /// At a midnight of the run, whatever the day: [piece], K.
  void look(long day, std::vector<double>& pieces);

 private:
  const assembly::Assembly& assembly_;
  std::vector<std::vector<double>> weights_;  // [piece][z]
  std::vector<double> layers_;                // [z]
  std::vector<double> today_, tomorrow_;      // [piece]
};

}  // namespace stillground::screen
