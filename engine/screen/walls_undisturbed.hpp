#pragma once

#include <span>
#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/screen/pack.hpp"

namespace stillground::screen {

/// The undisturbed ground at every piece of a bore's wall (response/pieces.hpp), mean over the field's metres of it:
/// straight between midnights.
class WallsUndisturbed {
 public:
  /// `assembly` must outlive it. At most as many `parts` as a pack has numbers.
  WallsUndisturbed(const assembly::Assembly& assembly, std::span<const double> parts);

  /// Pieces side by side [K], 0 beyond those that there are.
  struct Day {
    Pack midnight_before{}, midnight_after{};
  };

  /// Call for every day of the run, from 0 on.
  void begin_day(long day);

  const Day& today() const { return today_; }

  /// At a midnight of the run, whatever the day: [piece], K.
  void look(long day, std::span<double> pieces);

 private:
  struct Weights {
    std::size_t first = 0;  // layer
    std::vector<double> of_layers;
  };

  const assembly::Assembly& assembly_;
  std::vector<Weights> weights_;  // [piece]
  std::vector<double> layers_;    // [z]
  Day today_;
};

}  // namespace stillground::screen
