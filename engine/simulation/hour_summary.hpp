#pragma once

#include "engine/loop/closure.hpp"
#include "engine/simulation/statistics.hpp"

namespace stillground::simulation {

/// An hour as the warnings look at it.
struct HourSummary {
  double eft = 0;       ///< [K]
  double lft = 0;       ///< [K]
  bool flows = false;   ///< some fluid does
  double reynolds = 0;  ///< in the loops that are worst off
};

/// Adds an hour, the statistics's latest, to what is known since the run-year's and the run's start of extremes,
/// laminar flow and curves left. The coldest wall is the caller's to look for.
void update(Statistics& statistics, const HourSummary& hour, const loop::Demand& demand, const loop::HeatPumps& pumps);

}  // namespace stillground::simulation
