#include "engine/materials/film.hpp"

#include <algorithm>
#include <cmath>

#include "tests/catch.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;
using reference_solutions::reference_table;

namespace {

// Largest relative difference of `value(Re, roughness, Pr)` from a column of film_and_friction.csv, over its filled
// cells.
template <class Value>
double worst_miss(const char* column, double least_reynolds, Value value) {
  double worst = 0;
  int cells = 0;
  for (const auto& row : reference_table("film_and_friction.csv")) {
    const double re = std::stod(row.at("Re"));
    if (row.at(column).empty() || re < least_reynolds) continue;
    const double ours = value(re, std::stod(row.at("relative_roughness")), std::stod(row.at("Pr")));
    worst = std::max(worst, std::abs(ours / std::stod(row.at(column)) - 1));
    ++cells;
  }
  REQUIRE(cells > 0);
  return worst;
}

constexpr double printed = 1e-11;  // the table prints 12 digits

}  // namespace

// Reference for these: film_and_friction.csv (Gnielinski 1976, Petukhov 1970, Colebrook 1939 in 30 digits).
TEST_CASE("Smooth pipe's friction is Petukhov's") {
  CHECK(worst_miss("f_petukhov_smooth", 0, [](double re, double, double) { return materials::petukhov_friction(re); }) <
        printed);
}

TEST_CASE("Turbulent film is Gnielinski's, with the friction of Petukhov or of Filonenko") {
  CHECK(worst_miss("Nu_gnielinski_petukhov", 0, [](double re, double, double pr) {
          return materials::gnielinski(re, pr, materials::petukhov_friction(re));
        }) < printed);
  CHECK(worst_miss("Nu_filonenko", 0, [](double re, double, double pr) {
          return materials::gnielinski(re, pr, std::pow(1.82 * std::log10(re) - 1.64, -2));
        }) < printed);
}

TEST_CASE("From Re 4000 the film is Gnielinski's, in laminar flow that of uniform flux") {
  CHECK(worst_miss("Nu_gnielinski_petukhov", materials::turbulent_start,
                   [](double re, double, double pr) { return materials::nusselt(re, pr); }) < printed);
  CHECK(materials::nusselt(500, 40) == 4.364);
  CHECK(materials::nusselt(2300, 7) == 4.364);
}

TEST_CASE("Friction is 64/Re in laminar flow and Colebrook's from Re 4000") {
  CHECK(worst_miss("f_laminar", 0, [](double re, double roughness, double) {
          return materials::friction_factor(re, roughness);
        }) < printed);
  CHECK(worst_miss("f_colebrook", materials::turbulent_start, [](double re, double roughness, double) {
          return materials::friction_factor(re, roughness);
        }) < printed);
}

TEST_CASE("The friction factor put back into Colebrook's equation leaves nothing") {
  for (const double re : {4e3, 2e4, 1e6, 1e8}) {
    for (const double roughness : {0.0, 1e-6, 1e-4, 0.05}) {
      const double x = 1 / std::sqrt(materials::friction_factor(re, roughness));
      CHECK(std::abs(x + 2 * std::log10(roughness / 3.7 + 2.51 * x / re)) < 1e-14 * x);  // a few units of round-off
    }
  }
}

TEST_CASE("Film and friction do not jump at the ends of the transition, and run straight between them") {
  const double up = 1 + 1e-12;
  for (const double pr : {7.0, 40.0}) {
    CHECK(materials::nusselt(2300 * up, pr) == Approx(materials::nusselt(2300, pr)).epsilon(1e-9));
    CHECK(materials::nusselt(4000 / up, pr) == Approx(materials::nusselt(4000, pr)).epsilon(1e-9));
    CHECK(materials::nusselt(3150, pr) ==
          Approx((materials::nusselt(2300, pr) + materials::nusselt(4000, pr)) / 2).epsilon(1e-12));
  }
  CHECK(materials::friction_factor(2300 * up, 1e-4) == Approx(64.0 / 2300).epsilon(1e-9));
  CHECK(materials::friction_factor(4000 / up, 1e-4) == Approx(materials::friction_factor(4000, 1e-4)).epsilon(1e-9));
}

TEST_CASE("Regimes change at Re 2300 and 4000, and no flow is a regime of its own") {
  using materials::Regime;
  CHECK(materials::regime(0) == Regime::standing);
  CHECK(materials::regime(2300) == Regime::laminar);
  CHECK(materials::regime(2301) == Regime::transition);
  CHECK(materials::regime(4000) == Regime::turbulent);
  CHECK(materials::nusselt(0, 7) == materials::nusselt(1e-6, 7));
}

// 48/11 from the energy equation with a parabolic profile (Incropera & DeWitt [from memory]).
TEST_CASE("A laminar film resists as much as 48/11 says: 11/(48 pi k) per metre") {
  CHECK(materials::film_resistance(materials::nusselt(1000, 10), 0.5) == Approx(11 / (48 * M_PI * 0.5)).epsilon(1e-4));
}

TEST_CASE("A wall of two shells resists as much as the shells in series") {
  CHECK(
      materials::pipe_wall_resistance(0.026, 0.032, 0.4) ==
      Approx(materials::pipe_wall_resistance(0.026, 0.029, 0.4) + materials::pipe_wall_resistance(0.029, 0.032, 0.4)));
  // ln(e)/(2 pi k): a ratio of e and k = 1/(2 pi) give 1.
  CHECK(materials::pipe_wall_resistance(1, std::exp(1.0), 1 / (2 * M_PI)) == Approx(1).epsilon(1e-14));
}

TEST_CASE("Reynolds number from mass flow equals v d/nu") {
  const double d = 0.026, rho = 1020, mu = 2.5e-3, v = 0.7;
  CHECK(materials::reynolds(rho * v * M_PI * d * d / 4, d, mu) == Approx(rho * v * d / mu).epsilon(1e-14));
}
