#pragma once

#include "engine/march/fused/exchange.hpp"
#include "engine/march/stepper.hpp"

namespace stillground::march::fused {

/// Adds a stage's part to the hour's means: `share` of the hour, W the flow of the whole field [W/K].
void add_stage(const loop::OperatingPoint& point, double share, double heat_rate, HourMeans& sums);

/// The hour's means from what all groups' hours came to, summed in their order. `sums`: of all stages with flow.
/// `heat_rate`: W of the field; 0: stagnant, lft and eft are the topmost fluid's at the field's ends.
HourMeans hour_means(const Problem& problem, const Forcing& forcing, double heat_rate, const ExchangeBuffer& exchange,
                     const HourMeans& sums);

}  // namespace stillground::march::fused
