#pragma once

#include "engine/loop/closure.hpp"
#include "engine/run/tally.hpp"

namespace stillground::run {

/// An hour as the warnings look at it.
struct SeenHour {
  double eft = 0;       ///< [K]
  double lft = 0;       ///< [K]
  bool flows = false;   ///< some fluid does
  double reynolds = 0;  ///< in the loops that are worst off
};

/// Adds an hour, the tally's latest, to what is known since the run-year's and the run's start of extremes, laminar
/// flow and curves left. The coldest wall is the caller's to look for.
void see(Tally& tally, const SeenHour& hour, const loop::Demand& demand, const loop::HeatPumps& pumps);

}  // namespace stillground::run
