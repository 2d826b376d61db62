#pragma once

#include "engine/bore/multipole.hpp"

namespace stillground::bore {

/// The pipe of every leg and what its material and the grout store: what storage needs beyond the steady resistances.
struct Filling {
  double inner_radius = 0;         ///< of the pipes [m]
  double film_resistance = 0;      ///< of one leg [K m/W]
  double grout_heat_capacity = 0;  ///< [J/(m3 K)]
  double pipe_heat_capacity = 0;   ///< [J/(m3 K)]
};

/// Where a bore stores heat in steady state with all legs at one temperature, between wall (0) and fluid (1): grout and
/// pipe walls together, weighted by their heat capacities. Pipe walls are at the mean temperature between film and
/// grout all round.
struct EvenStorage {
  double mean = 0;
  double spread = 0;  ///< standard deviation about the mean
};
/// Of any number of legs evenly round the axis, the first on the x axis at x > 0.
EvenStorage even_storage(const Multipoles& multipoles, const Filling& filling);

/// The same on one side of an odd mode, as a root mean square, and the mean of the bore wall there; leg 1 at 1.
struct OddStorage {
  double root_mean_square = 0;
  double wall = 0;
};
/// Of leg 1 against the one opposite, with as many idle ones as there are: the side is the half bore round leg 1.
OddStorage opposite_storage(const Multipoles& multipoles, const Filling& filling);
/// Of four legs at +1, -1, +1, -1 round the axis: the side is leg 1's quarter.
OddStorage alternate_storage(const Multipoles& multipoles, const Filling& filling);

}  // namespace stillground::bore
