#pragma once

#include <vector>

#include "engine/march/radial.hpp"

namespace stillground::march {

/// Solves (1 - kappa E) x = b, E axial conduction and the loss through the surface, ring by ring: tridiagonal.
class AxialSolver {
 public:
  explicit AxialSolver(const Problem& problem);

  /// Overwrites the ground of one group's block; what the bore holds stays as it is. `kappa` [s], > 0.
  void solve(double kappa, double* block);

 private:
  void factor(double kappa);
  template <std::size_t rings>
  void solve_rings(double* x) const;

  std::size_t nr_, nz_, row_, ground_row_;
  Vector above_, below_;
  double kappa_ = 0;                            // of the factors
  std::vector<double> carry_, inverse_, back_;  // [z]
};

}  // namespace stillground::march
