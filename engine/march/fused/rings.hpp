#pragma once

#include <vector>

#include "engine/march/fused/kernels.hpp"
#include "engine/march/problem.hpp"
#include "engine/march/radial.hpp"

namespace stillground::march::fused {

/// Some rings of the grid stepped at one clock, as the kernels want them.
class Rings {
 public:
  /// `step` [s]; the kernels' `lanes`. Rings from `counted` on give nothing to the loss through the surface: another
  /// clock counts them.
  Rings(const Problem& problem, double step, const RingRange& range, std::size_t counted, std::size_t lanes);

  /// Heat that leaves one bore's ground through the surface [W]; `y` [ring][z].
  double surface_loss(const double* y) const;

  const RingFactors& factors() const { return factors_; }
  const RadialFactors& radial() const { return radial_; }
  double step() const { return step_; }

  Rings(const Rings&) = delete;
  Rings& operator=(const Rings&) = delete;

 private:
  double step_;
  RadialFactors radial_;
  std::vector<unsigned char> uniform_;
  Vector inverse_of_layer_, carry_of_layer_, drop_of_layer_;
  Vector first_above_, first_below_, above_, below_;
  std::vector<double> surface_;
  RingFactors factors_;
};

}  // namespace stillground::march::fused
