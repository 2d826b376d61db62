#pragma once

#include "engine/march/problem.hpp"

namespace stillground::march {

/// Which radial modes of a grid may change to the slow clock: those that decay by less than a factor e^4 within a turn
/// in its quickest ground. One clock where that leaves nothing to save. `axial_rate`: the grid's stiffest [1/s]; a step
/// of axial conduction stays within half of what an explicit step bears, so that it makes no extremes.
Clocks choose_clocks(const ground::Grid& grid, double axial_rate);

}  // namespace stillground::march
