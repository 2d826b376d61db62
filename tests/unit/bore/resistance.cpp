#include <cmath>
#include <complex>
#include <utility>

#include "engine/base/errors.hpp"
#include "engine/bore/effective.hpp"
#include "engine/bore/leg_storage.hpp"
#include "engine/bore/loop_type.hpp"
#include "engine/bore/section_field.hpp"
#include "engine/materials/film.hpp"
#include "tests/catch.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;

namespace {

// An invented bore.
model::Bore some_bore() {
  model::Bore bore;
  bore.depth = 120;
  bore.diameter = 0.15;
  bore.loop = model::SingleU{0.08};
  bore.pipe = {"", 0.0422, 0.00384, 0.42, 2.1e6, 1e-6};
  bore.grout = {"", {1.6, 3.0e6}};
  return bore;
}

bore::ModeResistances resistances(const model::Bore& bore, double film) {
  return bore::loop_type(bore.loop).resistances(bore, 2.3, {film});
}

bore::Multipoles two_legs(double x, double grout) {
  return bore::solve_multipoles({0.07, grout, 2.2, {{x, 0, 0.02, 0.06}, {-x, 0, 0.02, 0.06}}});
}

// Mean of temperature^power over the grout right of x = `from` by a plain sum over a polar grid; its cells cut the
// pipes' edges.
double plain_mean(const bore::SectionField& field, double from, int power = 1) {
  constexpr int rings = 250, rays = 1000;
  double sum = 0, area = 0;
  for (int i = 0; i < rings; ++i) {
    for (int j = 0; j < rays; ++j) {
      const auto z = std::polar((i + 0.5) / rings * field.section.radius, 2 * M_PI * (j + 0.5) / rays);
      bool grout = z.real() > from;
      for (const auto& pipe : field.section.pipes) grout = grout && std::abs(z - pipe.centre()) > pipe.outer_radius;
      if (!grout) continue;
      sum += std::pow(bore::grout_point(field, z).temperature, power) * std::abs(z);
      area += std::abs(z);
    }
  }
  return sum / area;
}

// Pipe walls that store next to nothing: what is left is the grout.
const bore::Filling grout_alone{0.017, 0.006, 1e6, 1};

}  // namespace

// Reference: effective_resistance.csv (Hellstrom 1991, proved against a matrix exponential of the legs' equations).
TEST_CASE("Heat that passes between the legs raises the effective resistance as Hellstrom says") {
  for (const auto& row : reference_solutions::reference_table("effective_resistance.csv")) {
    const auto value = [&](const char* name) { return std::stod(row.at(name)); };
    const bore::LegResistances legs{value("Rb"), value("Ra")};
    const double length = value("length"), flow = value("mass_flow"), c = value("heat_capacity");
    CHECK(bore::effective_resistance_uniform_flux(legs, length, flow, c) ==
          Approx(value("Rb_eff_equal_flux")).epsilon(1e-12));  // the table prints 13 digits
    CHECK(bore::effective_resistance_uniform_wall(legs, length, flow, c) ==
          Approx(value("Rb_eff_equal_wall")).epsilon(1e-12));
  }
}

TEST_CASE("In a very short bore, or at a very large flow, the effective resistance is the local one") {
  const bore::LegResistances legs{0.1, 0.4};
  CHECK(bore::effective_resistance_uniform_flux(legs, 0.1, 1, 4200) == Approx(0.1).epsilon(1e-8));
  CHECK(bore::effective_resistance_uniform_wall(legs, 0.1, 1, 4200) == Approx(0.1).epsilon(1e-8));
}

TEST_CASE("The resistances of a bore of the scenario are those of its drawn section") {
  const model::Bore bore = some_bore();
  const double film = 0.013;
  const auto ours = resistances(bore, film);
  const double leg = film + std::log(42.2 / (42.2 - 2 * 3.84)) / (2 * M_PI * 0.42);
  const auto drawn = bore::solve_multipoles({0.075, 1.6, 2.3, {{0.04, 0, 0.0211, leg}, {-0.04, 0, 0.0211, leg}}});
  CHECK(ours.resistance[0] == Approx(drawn.resistance.sum() / 4).epsilon(1e-13));
  CHECK(ours.resistance[1] == Approx((drawn.resistance(0, 0) - drawn.resistance(0, 1))).epsilon(1e-13));
}

TEST_CASE("A better film lowers both resistances by what the legs carry of it") {
  const model::Bore bore = some_bore();
  const auto laminar = resistances(bore, 0.15);
  const auto turbulent = resistances(bore, 0.01);
  // Half of one leg's film in R_b and two legs' in R_a, but for the few per cent that the higher multipoles answer.
  CHECK(laminar.resistance[0] - turbulent.resistance[0] == Approx(0.07).epsilon(0.05));
  CHECK(2 * (laminar.resistance[1] - turbulent.resistance[1]) == Approx(0.28).epsilon(0.05));
}

TEST_CASE("Legs that do not fit into the bore are an input error") {
  model::Bore bore = some_bore();
  bore.diameter = 0.11;
  for (const double spacing : {0.08, 0.04}) {
    bore.loop = model::SingleU{spacing};
    CHECK_THROWS_AS(resistances(bore, 0.01), InputError);
  }
}

// Second method: a plain sum over the area, whose cells cut the pipes' edges: 1e-4 of the fluid's temperature.
TEST_CASE(
    "The grout's share of a mode's temperature drop is its mean, in an odd mode root mean square, over the area") {
  for (const auto& [x, grout] : {std::pair{0.021, 2.2}, {0.035, 0.8}, {0.049, 1.5}}) {
    CAPTURE(x, grout);
    const auto multipoles = two_legs(x, grout);
    const auto stored = bore::even_storage(multipoles, grout_alone);
    const double r11 = multipoles.resistance(0, 0), r12 = multipoles.resistance(0, 1);
    const auto even = bore::field_of(multipoles, Eigen::Vector2d{1, 1});
    const auto odd = bore::field_of(multipoles, Eigen::Vector2d{1, -1});
    const double mean = plain_mean(even, -1) / (r11 + r12);
    CHECK(stored.mean == Approx(mean).margin(1e-4));
    const double square = plain_mean(even, -1, 2) / std::pow(r11 + r12, 2);
    CHECK(stored.spread == Approx(std::sqrt(square - mean * mean)).epsilon(0.005));  // rays 4 degrees apart
    CHECK(bore::opposite_storage(multipoles, grout_alone).root_mean_square ==
          Approx(std::sqrt(plain_mean(odd, 0, 2)) / (r11 - r12)).epsilon(0.005));
  }
}

TEST_CASE("Pipe walls count with their own temperature and heat capacity") {
  const auto multipoles = two_legs(0.035, 1.5);
  const auto grout = bore::even_storage(multipoles, grout_alone);
  const auto walls = bore::even_storage(multipoles, {0.017, 0.006, 1, 2e6});  // grout that stores next to nothing
  const double fluid = multipoles.resistance(0, 0) + multipoles.resistance(0, 1);
  // Between what the film and what film and wall (0.06 K m/W) leave of the fluid's temperature.
  CHECK(walls.mean < 1 - 0.006 / fluid);
  CHECK(walls.mean > 1 - 0.06 / fluid);
  const double grout_area = 0.07 * 0.07 - 2 * 0.02 * 0.02, wall_area = 2 * (0.02 * 0.02 - 0.017 * 0.017);
  const auto both = bore::even_storage(multipoles, {0.017, 0.006, 3e6, 2e6});
  const double expected =
      (3e6 * grout_area * grout.mean + 2e6 * wall_area * walls.mean) / (3e6 * grout_area + 2e6 * wall_area);
  CHECK(both.mean == Approx(expected).epsilon(1e-5));  // what "next to nothing" still stores
}

// The ring of four: legs at one temperature warm all of the grout alike, whichever leg is looked at first.
TEST_CASE("The spread of four legs is that of the whole grout") {
  bore::BoreSection section{0.075, 1.6, 2.2, {}};
  for (int leg = 0; leg < 4; ++leg) {
    const auto centre = std::polar(0.045, leg * M_PI / 2);
    section.pipes.push_back({centre.real(), centre.imag(), 0.016, 0.084});
  }
  const auto multipoles = bore::solve_multipoles(section);
  const auto storage = bore::even_storage(multipoles, {0.0131, 0.008, 1e6, 1});
  const auto field = bore::field_of(multipoles, Eigen::VectorXd::Ones(4));
  const double fluid = multipoles.resistance.row(0).sum();
  const double mean = plain_mean(field, -1) / fluid, square = plain_mean(field, -1, 2) / (fluid * fluid);
  CHECK(storage.mean == Approx(mean).margin(1e-4));
  CHECK(storage.spread == Approx(std::sqrt(square - mean * mean)).epsilon(0.005));
}

TEST_CASE("Grout is warmer than the wall and colder than the fluid, the colder the more film and pipe resist") {
  const auto section = [](double leg) {
    return bore::solve_multipoles({0.07, 1.5, 2.2, {{0.035, 0, 0.02, leg}, {-0.035, 0, 0.02, leg}}});
  };
  const auto bare = section(0.01), thick = section(0.2);
  const auto even = [](const bore::Multipoles& of) { return bore::even_storage(of, grout_alone).mean; };
  const auto odd = [](const bore::Multipoles& of) { return bore::opposite_storage(of, grout_alone).root_mean_square; };
  CHECK((0 < even(thick) && even(thick) < even(bare) && even(bare) < 1));
  CHECK((0 < odd(thick) && odd(thick) < odd(bare) && odd(bare) < 1));
}
