#pragma once

#include <memory>
#include <span>
#include <vector>

#include "engine/ground/grid.hpp"

namespace stillground::ground {

/// The rise [K] that a bore's ground would reach in the end under constant heat: [z][r], r fastest, on the grid's own
/// cells. `wall_heat`: through the bore wall per height of each layer, [z] [W/m]. Surface as in axial_conductances.
///
/// Solved on the engine's grid continued outwards and downwards until its edges no longer matter (a steady field
/// reaches farther than any run's): rings of the same ratio on to ten times the grid's depth, layers growing on below
/// to as much. One sparse symmetric factorisation serves many right-hand sides.
class Steady {
 public:
  explicit Steady(const Grid& grid, double surface_film = 0);
  ~Steady();
  Steady(Steady&&) noexcept;

  std::vector<double> rise(std::span<const double> wall_heat) const;

 private:
  struct System;
  std::unique_ptr<System> system_;
};

}  // namespace stillground::ground
