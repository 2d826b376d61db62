#include "engine/bore/section_field.hpp"

#include <cmath>
#include <complex>

#include "tests/catch.hpp"
#include "tests/unit/bore/sections.hpp"

using namespace stillground;
using Complex = std::complex<double>;

namespace {

// The field of three unequal pipes with heats of both signs, and the fluid temperatures that go with it.
struct Solved {
  bore::SectionField field;
  Eigen::VectorXd fluid;  // above the mean wall temperature [K]
};

Solved solved() {
  const Eigen::Vector3d heat{30, -12, 21};
  const bore::Multipoles multipoles = bore::solve_multipoles(test::three_unequal_pipes());
  return {bore::field_of(multipoles, heat), multipoles.resistance * heat};
}

double outward(const bore::FieldPoint& point, Complex normal) {
  return (point.gradient * std::conj(normal)).real();
}

template <class Body>
void round_a_circle(Complex centre, double radius, Body body) {
  constexpr int points = 90;
  for (int i = 0; i < points; ++i) {
    const Complex normal = std::polar(1.0, 2 * M_PI * i / points);
    body(centre + radius * normal, normal);
  }
}

constexpr double small = 1e-8;  // against temperatures of 1 to 10 K: the order stops at a change of 1e-10

}  // namespace

// The boundary condition itself: T_fluid - T = 2 pi r R (flux), flux = -k dT/dr.
TEST_CASE("On every pipe the fluid stands above the surface by the flux times film and wall") {
  const auto [field, fluid] = solved();
  for (std::size_t n = 0; n < field.section.pipes.size(); ++n) {
    const auto& pipe = field.section.pipes[n];
    double worst = 0;
    round_a_circle(pipe.centre(), pipe.outer_radius, [&](Complex z, Complex normal) {
      const auto here = bore::grout_point(field, z);
      const double flux = -field.section.grout_conductivity * outward(here, normal);
      const double drop = 2 * M_PI * pipe.outer_radius * pipe.resistance * flux;
      worst = std::max(worst, std::abs(fluid[Eigen::Index(n)] - here.temperature - drop));
    });
    CHECK(worst < 10 * small);  // at single points the last modes of the series weigh more than in the resistances
  }
}

TEST_CASE(
    "At the bore wall grout and ground have one temperature and one heat flux, and the mean temperature is zero") {
  const auto [field, fluid] = solved();
  const auto& section = field.section;
  double mean = 0;
  round_a_circle(0, section.radius, [&](Complex z, Complex normal) {
    const auto grout = bore::grout_point(field, z);
    const auto ground = bore::ground_point(field, z);
    CHECK(grout.temperature == Approx(ground.temperature).margin(1e-12));
    CHECK(section.grout_conductivity * outward(grout, normal) ==
          Approx(section.ground_conductivity * outward(ground, normal)).margin(1e-9));
    mean += grout.temperature / 90;
  });
  CHECK(std::abs(mean) < small);
}

TEST_CASE("The heat of all pipes passes through any circle in the ground") {
  const auto [field, fluid] = solved();
  for (const double radius : {0.09, 3.0}) {
    double heat = 0;
    round_a_circle(0, radius, [&](Complex z, Complex normal) {
      heat -=
          field.section.ground_conductivity * outward(bore::ground_point(field, z), normal) * 2 * M_PI * radius / 90;
    });
    CHECK(heat == Approx(39).epsilon(1e-9));
  }
}

TEST_CASE("The gradient is the temperature's slope, in the grout and in the ground") {
  const auto [field, fluid] = solved();
  const double step = 1e-6;  // central differences: error about step^2 T''' and round-off/step
  const auto slope = [&](auto point, Complex z) {
    return Complex{point(field, z + step).temperature - point(field, z - step).temperature,
                   point(field, z + Complex{0, step}).temperature - point(field, z - Complex{0, step}).temperature} /
           (2 * step);
  };
  CHECK(std::abs(slope(bore::grout_point, {0.01, 0.05}) - bore::grout_point(field, {0.01, 0.05}).gradient) < 1e-5);
  CHECK(std::abs(slope(bore::ground_point, {0.1, -0.03}) - bore::ground_point(field, {0.1, -0.03}).gradient) < 1e-5);
}

// Mean of (q/2 pi k) ln(r_b/r) over r_p < r < r_b, by elementary integration.
TEST_CASE("Grout round one pipe in the middle has the mean of a logarithmic profile") {
  const double rb = 0.06, rp = 0.02, k = 1.5;
  const auto multipoles = bore::solve_multipoles({rb, k, 2.5, {{0, 0, rp, 0.1}}}, 4);
  const auto field = bore::field_of(multipoles, Eigen::VectorXd::Ones(1));
  const double mean = ((rb * rb - rp * rp) / 2 - rp * rp * std::log(rb / rp)) / (rb * rb - rp * rp) / (2 * M_PI * k);
  CHECK(bore::mean_grout_temperature(field) == Approx(mean).epsilon(1e-12));
}

// Second method: a sum over a polar grid that leaves the pipes out. Its cells cut the pipes' edges: error about 1e-4.
TEST_CASE("Green's identity and a plain sum over the area agree on the mean grout temperature") {
  const auto [field, fluid] = solved();
  constexpr int rings = 300, rays = 1200;
  double sum = 0, area = 0;
  for (int i = 0; i < rings; ++i) {
    for (int j = 0; j < rays; ++j) {
      const Complex z = std::polar((i + 0.5) / rings * field.section.radius, 2 * M_PI * j / rays);
      bool grout = true;
      for (const auto& pipe : field.section.pipes) grout = grout && std::abs(z - pipe.centre()) > pipe.outer_radius;
      if (!grout) continue;
      sum += bore::grout_point(field, z).temperature * std::abs(z);
      area += std::abs(z);
    }
  }
  const double largest = fluid.cwiseAbs().maxCoeff();
  CHECK(bore::mean_grout_temperature(field) == Approx(sum / area).margin(1e-4 * largest));
}
