#pragma once

#include <array>
#include <cstddef>
#include <span>

namespace stillground::field {

/// A radial cell and its share in an interpolated value.
struct RadialWeight {
  std::size_t cell = 0;
  double weight = 0;
};

/// Weights that interpolate a bore's own temperature rise at `distance` [m] from its axis: cubic (Lagrange) in ln r
/// through the four nodes about it. `r` are the grid's nodes, rising [m], at least four. Inside the first node the
/// first node's value is held, beyond the last node the last one's (the outer edge is adiabatic and far away). The
/// weights sum to 1.
std::array<RadialWeight, 4> radial_weights(std::span<const double> r, double distance);

}  // namespace stillground::field
