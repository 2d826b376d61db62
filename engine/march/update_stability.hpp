#pragma once

#include "engine/march/problem.hpp"

namespace stillground::march {

/// By how much the neighbours' sum, extrapolated from update to update (see ambient.hpp), grows per update once nothing
/// drives it: the spectral radius of the linear map from one update to the next, at most 1 where the march is stable.
/// The extrapolated sum lags behind what the neighbours do by an update interval: bores that respond to each other
/// within that time overshoot, and where they stand some decimetres apart (at a day) the overshoot feeds itself.
///
/// `regime`: flow through the bores, the least resistances that occur; `interval` [s], > 0: between two updates;
/// `gain`: on the coupling, 1 as it is. 0 for a lone bore.
double update_growth(const Problem& problem, const FlowRegime& regime, double interval, double gain = 1);

/// Whether the sum may be extrapolated over `interval` [s]: update_growth is not above 1 with the coupling a quarter
/// stronger than it is (a margin for what the bound leaves out: films, COP curves, unequal bores). Cheap where bores
/// stand apart as usual.
bool extrapolation_is_stable(const Problem& problem, const FlowRegime& regime, double interval);

}  // namespace stillground::march
