#pragma once

#include <cstddef>

#include "engine/ground/grid.hpp"

namespace stillground::march {

/// Radial modes that are stepped once a macro-step, and in how many steps axial conduction then is.
struct SlowModes {
  std::size_t count = 0;  ///< from the slowest on; 0: none, every ring takes every step
  int axial_steps = 1;    ///< in half a macro-step
};

/// How often each part of the problem is stepped.
///
/// Bores, fluid and the ground near them take every `step`. The daily wave dies away within decimetres: of the modes in
/// which heat spreads from ring to ring (RadialModes) only the quick ones answer within hours. The slow ones are
/// stepped once a macro-step, and so is axial conduction. The neighbours' sum is formed once an `update_interval` and
/// extrapolated in between.
struct Multirate {
  static constexpr int macro_step_hours = 6;                       ///< divides a day
  static constexpr double macro_step = macro_step_hours * 3600.0;  ///< [s]
  static constexpr std::size_t reduced_modes = 5;  ///< that stand for the slow modes within a macro-step: ReducedModes

  double step = 1800;              ///< h [s]; divides an hour
  double update_interval = 86400;  ///< of the neighbours' sum [s]
  SlowModes slow = {};

  bool two_rates() const { return slow.count > 0; }
};

/// The slow modes are those that decay by less than a factor e^4 within a macro-step in the grid's quickest ground;
/// none where that leaves nothing to save. `axial_rate`: the grid's stiffest [1/s]; a step of axial conduction stays
/// within half of what an explicit step bears, so that it makes no extremes.
SlowModes choose_slow_modes(const ground::Grid& grid, double axial_rate);

}  // namespace stillground::march
