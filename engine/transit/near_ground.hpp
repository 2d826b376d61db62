#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "engine/model/ground.hpp"

namespace stillground::transit {

/// Slices that lie in one kind of ground.
struct Stretch {
  std::size_t first = 0;
  std::size_t end = 0;      ///< one past the last
  std::size_t network = 0;  ///< of a flow regime's
  model::Solid solid;
};

/// The ground within some metres of a bore, slice by slice: how much warmer it is for the bore's heat. Rings of one
/// ratio of radius, no heat along the bore, none beyond the outermost ring: for some weeks.
///
///   rho c A_i theta_i' = K (theta_{i-1} - theta_i) + K (theta_{i+1} - theta_i) + (i = 0) q,   K = 2 pi k/ln(ratio)
///
/// Stepped by backward Euler.
class NearGround {
 public:
  NearGround(double bore_radius, std::vector<Stretch> stretches);

  /// `heat` [slice]: mean through the wall over the step [W/m].
  void advance(double step, std::span<const double> heat);

  /// theta at the first node, [slice] [K].
  std::span<const double> first() const { return {theta_.data(), slices_}; }

  const std::vector<Stretch>& stretches() const { return stretches_; }

  /// Wall to the first node [K m/W].
  double first_resistance(const model::Solid& solid) const;

 private:
  struct Ring {
    double area = 0;  ///< [m2]
  };
  /// A stretch's elimination for one step: from the outermost ring to the wall.
  struct Factors {
    std::vector<double> stored;  ///< [ring]: rho c A/step [W/(m K)]
    std::vector<double> pivot;   ///< [ring]: one over it [K m/W]
    double conductance = 0;
  };
  Factors factors(const model::Solid& solid, double step) const;

  double ratio_log_;  // ln of neighbouring radii's ratio
  std::vector<Ring> rings_;
  std::vector<Stretch> stretches_;
  std::size_t slices_;
  std::vector<double> theta_;  // [ring][slice]
  double factored_for_ = 0;    // step [s]
  std::vector<Factors> factors_;
};

}  // namespace stillground::transit
