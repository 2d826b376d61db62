#pragma once

#include "engine/march/problem.hpp"

namespace stillground::march {

/// Where the rings of a grid may change to the slow clock, from how far a day's changes reach in its quickest ground,
/// L = sqrt(alpha day): the seam 2 L from the bore wall, the buffer 1.4 L wider, each at the next ring's face. One
/// clock where that leaves nothing to save. `axial_rate`: the grid's stiffest [1/s]; the slow clock's explicit steps
/// stay within half of what the scheme bears.
///
/// Measured, largest difference of an hour's EFT from one clock under 45 W/m at random every hour (alpha 1.1e-6 m2/s,
/// L 0.31 m, rings 1.26 apart, a year): seam 1.3 L and buffer 1.5 L 0.010 K, 1.7 and 1.9 L 0.004 K, 2.2 and 1.4 L
/// 0.002 K, 2.8 and 1.8 L 0.0004 K.
Clocks choose_clocks(const ground::Grid& grid, double axial_rate);

}  // namespace stillground::march
