#include <cmath>

#include "engine/materials/film.hpp"
#include "tests/catch.hpp"

using namespace stillground::materials;

TEST_CASE("Between two parallel plates both walls of an annulus are alike") {
  // 5.385 = 70/13: one plate heated by a uniform flux, the other adiabatic (closed form; Shah & London 1978 [from
  // memory]).
  CHECK(annulus_nusselt(500, 7, 1, AnnulusWall::inner) == Approx(70.0 / 13).epsilon(1e-4));
  CHECK(annulus_nusselt(500, 7, 1, AnnulusWall::outer) == Approx(70.0 / 13).epsilon(1e-4));
}

TEST_CASE("A thin core is washed better than the wide wall round it, slow or fast") {
  for (const double reynolds : {800.0, 3000.0, 2e4}) {
    CHECK(annulus_nusselt(reynolds, 9, 0.3, AnnulusWall::inner) >
          annulus_nusselt(reynolds, 9, 0.3, AnnulusWall::outer));
  }
}

TEST_CASE("An annulus' film does not jump between laminar and turbulent flow") {
  for (const AnnulusWall wall : {AnnulusWall::inner, AnnulusWall::outer}) {
    for (const double edge : {laminar_end, turbulent_start}) {
      CHECK(annulus_nusselt(edge * (1 - 1e-9), 9, 0.5, wall) ==
            Approx(annulus_nusselt(edge * (1 + 1e-9), 9, 0.5, wall)).epsilon(1e-6));
    }
  }
}

TEST_CASE("The Reynolds number of an annulus counts its hydraulic diameter") {
  // rho v (outer - inner)/mu with v from the flow and the ring's area.
  const double area = M_PI / 4 * (0.1 * 0.1 - 0.06 * 0.06);
  CHECK(annulus_reynolds(0.5, 0.06, 0.1, 1.3e-3) == Approx(0.5 / area * 0.04 / 1.3e-3));
}

TEST_CASE("A film's resistance is that of its coefficient over the wall's girth") {
  const double h = 8 * 0.58 / 0.04;  // Nu k/(outer - inner)
  CHECK(annulus_film_resistance(8, 0.58, 0.06, 0.1, AnnulusWall::inner) == Approx(1 / (h * M_PI * 0.06)));
  CHECK(annulus_film_resistance(8, 0.58, 0.06, 0.1, AnnulusWall::outer) == Approx(1 / (h * M_PI * 0.1)));
}
