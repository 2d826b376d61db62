#pragma once

#include <vector>

#include "engine/ground/grid.hpp"

namespace stillground::ground {

/// Conductances between layers per area [W/(m2 K)]: nz + 1 of them, at the faces from the surface down. Half cells in
/// series across each face; the surface face is held at theta = 0 through `surface_film` [W/(m2 K)] (0: no film), the
/// bottom face is adiabatic.
std::vector<double> axial_conductances(const Grid& grid, double surface_film = 0);

}  // namespace stillground::ground
