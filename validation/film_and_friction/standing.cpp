#include <cmath>
#include <numbers>

#include "engine/materials/film.hpp"
#include "validation/film_and_friction/claims.hpp"

namespace stillground::validation {

void judge_standing(Check& check) {
  auto& claim = check.claim(
      {"nusselt-standing", "fluid that stands gives off no less heat than it conducts", Origin::computed,
       "conduction in a cylinder whose wall is held: its mean decays by j_01^2 a t/r^2, Nu = j_01^2, the first zero of "
       "J_0 squared (Carslaw & Jaeger 1959, section 7.6 [number from memory]); free convection only adds to it",
       "Nu = h d/k of the mean fluid against the wall, a round pipe, at rest; no temperature enters",
       "0.1 %: a number"});
  double zero = 2.4;  // Newton's method: J_0' = -J_1
  for (int n = 0; n < 8; ++n) zero += std::cyl_bessel_j(0.0, zero) / std::cyl_bessel_j(1.0, zero);
  claim.known_miss(
      "pipe", zero * zero, materials::standing_nusselt, 1e-3, 0.25,
      "taken as in laminar flow, so that the film does not jump where the flow dies out; the film resists "
      "a third more than conduction alone, which moves the EFT of two bores that stand 16 h a day by 0.0005 "
      "K at most in hours with flow: nothing but this number tells it");
}

}  // namespace stillground::validation
