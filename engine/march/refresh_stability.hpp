#pragma once

#include "engine/march/problem.hpp"

namespace stillground::march {

/// By how much the neighbours' sum, carried on from refresh to refresh (see ambient.hpp), grows per refresh once
/// nothing drives it: the spectral radius of the linear map from one refresh to the next, at most 1 where the march is
/// stable. What is carried on lags behind what the neighbours do by a refresh: bores that answer each other within that
/// time overshoot, and beyond a distance of some decimetres in a day the overshoot feeds itself.
///
/// `regime`: flow through the bores, the least resistances that occur; `refresh` [s], > 0, instead of the problem's
/// own; `gain`: on the coupling, 1 as it is. 0 for a lone bore.
double refresh_growth(const Problem& problem, const FlowRegime& regime, double refresh, double gain = 1);

/// Whether the sum may be carried on over `refresh` [s]: refresh_growth is not above 1 with the coupling a quarter
/// stronger than it is (a margin for what the bound leaves out: films, COP curves, unequal bores). Cheap where bores
/// stand apart as usual.
bool carries_on(const Problem& problem, const FlowRegime& regime, double refresh);

}  // namespace stillground::march
