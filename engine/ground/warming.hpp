#pragma once

#include <vector>

#include "engine/ground/grid.hpp"

namespace stillground::ground {

/// Temperature change [K] of every grid cell when the surface (behind `surface_film` [W/(m2 K)], 0: none) warms by
/// `trend` [K/s] from time 0 on: [time][z] at multiples of `interval` [s] up to and beyond `duration` [s]. Marched
/// implicitly (Crank-Nicolson; the ramp is continuous) on cells of at most 0.1 m near the surface, averaged onto the
/// grid's.
std::vector<double> surface_warming(const Grid& grid, double trend, double surface_film, double interval,
                                    double duration);

}  // namespace stillground::ground
