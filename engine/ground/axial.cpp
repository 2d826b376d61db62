#include "engine/ground/axial.hpp"

namespace stillground::ground {

std::vector<double> axial_conductances(const Grid& grid, double surface_film) {
  const auto half = [&](std::size_t k) { return grid.height(k) / (2 * grid.solid[k].conductivity); };
  std::vector<double> conductance(grid.nz() + 1, 0.0);
  conductance[0] = 1 / (half(0) + (surface_film > 0 ? 1 / surface_film : 0.0));
  for (std::size_t k = 1; k < grid.nz(); ++k) conductance[k] = 1 / (half(k - 1) + half(k));
  return conductance;
}

}  // namespace stillground::ground
