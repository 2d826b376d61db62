#include "engine/materials/rating.hpp"

namespace stillground::materials {

double dimension_ratio(double outer_diameter, double wall) {
  constexpr std::array standard{7.0, 7.3, 7.4, 9.0, 11.0, 13.5, 13.6, 17.0, 21.0, 26.0};
  constexpr double round_off = 0.005;  // catalogues round walls to the tenth or hundredth of a millimetre
  const double own = outer_diameter / wall;
  if (own < standard.front() * (1 - round_off)) return own;
  for (const double ratio : standard) {
    if (own <= ratio * (1 + round_off)) return ratio;
  }
  return own;
}

// P = 2 S/(R - 1): the hoop's equilibrium at the mean diameter d - t, P (d - t) = 2 S t.
double pressure_rating(const PipeStrength& strength, double ratio) {
  return 2 * strength.stress / (ratio - 1);
}

}  // namespace stillground::materials
