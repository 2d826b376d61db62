#include "engine/bore/multipole.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <map>
#include <string>

#include "engine/base/errors.hpp"
#include "engine/bore/effective.hpp"
#include "tests/catch.hpp"
#include "tests/unit/bore/sections.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;

namespace {

using Row = std::map<std::string, std::string>;
using stillground::testing::Contains;

double number(const Row& row, const std::string& name) {
  return std::stod(row.at(name));
}

double miss(const Row& row, const std::string& name, double ours) {
  return std::abs(ours / number(row, name) - 1);
}

bore::BoreSection single_u(const Row& row) {
  const double x = number(row, "spacing") / 2;
  return {
      number(row, "r_bore"),
      number(row, "k_grout"),
      number(row, "k_ground"),
      {{x, 0, number(row, "r_pipe"), number(row, "R_pipe")}, {-x, 0, number(row, "r_pipe"), number(row, "R_pipe")}}};
}

bore::BoreSection double_u(const Row& row) {
  bore::BoreSection section{number(row, "r_bore"), number(row, "k_grout"), number(row, "k_ground"), {}};
  const double c = number(row, "pipe_circle");
  for (const std::complex<double> z : {std::complex{c, 0.0}, {0.0, c}, {-c, 0.0}, {0.0, -c}})
    section.pipes.push_back({z.real(), z.imag(), number(row, "r_pipe"), number(row, "R_pipe")});
  return section;
}

constexpr double printed = 2e-12;  // the tables print 13 digits, of which about 12 are right

}  // namespace

// Reference: bore_resistance.csv (Claesson & Hellstrom 2011, evaluated by a solver of its own; closed forms of
// Hellstrom 1991).
TEST_CASE("A single U has the resistances of the multipole method at orders 0, 1 and 10") {
  int rows = 0;
  for (const Row& row : reference_solutions::reference_table("bore_resistance.csv")) {
    for (const int order : {0, 1, 10}) {
      const auto legs = bore::leg_resistances(bore::solve_multipoles(single_u(row), order).resistance);
      CAPTURE(rows, order);
      CHECK(miss(row, "Rb_order" + std::to_string(order), legs.bore) < printed);
      CHECK(miss(row, "Ra_order" + std::to_string(order), legs.internal) < printed);
    }
    ++rows;
  }
  CHECK(rows == 54);
}

// Reference: the same file's columns by boundary integral equations, 600 points a circle: another method, not another
// program.
TEST_CASE(
    "With the order raised until nothing changes a single U has the resistances of a boundary integral solution") {
  for (const Row& row : reference_solutions::reference_table("bore_resistance.csv")) {
    const auto legs = bore::leg_resistances(bore::solve_multipoles(single_u(row)).resistance);
    CHECK(miss(row, "Rb_boundary", legs.bore) < 1e-9);  // the order stops at a change of 1e-10 of the largest element
    CHECK(miss(row, "Ra_boundary", legs.internal) < 1e-9);
  }
}

// Reference: bore_resistance_double.csv, made in the same two ways.
TEST_CASE("A double U has the resistance matrix of the multipole method") {
  for (const Row& row : reference_solutions::reference_table("bore_resistance_double.csv")) {
    const Eigen::MatrixXd r = bore::solve_multipoles(double_u(row), 10).resistance;
    CHECK(miss(row, "R11", r(0, 0)) < printed);
    CHECK(miss(row, "R12", r(0, 1)) < printed);
    CHECK(miss(row, "R13", r(0, 2)) < printed);
    CHECK(miss(row, "Rb_order10", r.sum() / 16) < printed);
    CHECK(miss(row, "Rb_boundary", bore::solve_multipoles(double_u(row)).resistance.sum() / 16) < 1e-9);
  }
}

// Heat from one pipe warms a second as much as heat from the second warms the first: Green's theorem for a symmetric
// operator.
TEST_CASE("The resistance matrix is symmetric whatever the pipes") {
  const Eigen::MatrixXd r = bore::solve_multipoles(test::three_unequal_pipes()).resistance;
  CHECK((r - r.transpose()).cwiseAbs().maxCoeff() < 1e-13);  // round-off of elements near 0.3
}

TEST_CASE("Turning the bore about its axis changes no resistance") {
  const bore::BoreSection straight{0.07, 0.9, 2.4, {{0.03, 0, 0.016, 0.07}, {-0.04, 0, 0.02, 0.05}}};
  bore::BoreSection turned = straight;
  for (auto& pipe : turned.pipes) {
    const std::complex<double> z = pipe.centre() * std::polar(1.0, 0.7);
    pipe.x = z.real();
    pipe.y = z.imag();
  }
  const Eigen::MatrixXd difference =
      bore::solve_multipoles(straight).resistance - bore::solve_multipoles(turned).resistance;
  CHECK(difference.cwiseAbs().maxCoeff() < 1e-12);  // round-off; on the axis a smaller real system is solved
}

// ln(r_b/r_p)/(2 pi k): conduction through a cylinder's wall (Incropera & DeWitt [from memory]).
TEST_CASE("One pipe in the middle resists as a cylinder's wall, at any order and in any ground") {
  for (const int order : {0, 5}) {
    for (const double ground : {0.5, 4.0}) {
      const bore::BoreSection section{0.06, 1.5, ground, {{0, 0, 0.02, 0.08}}};
      CHECK(bore::solve_multipoles(section, order).resistance(0, 0) ==
            Approx(0.08 + std::log(3.0) / (2 * M_PI * 1.5)).epsilon(1e-14));
    }
  }
}

TEST_CASE("Pipes that touch each other or the wall are solved as long as they resist at all") {
  for (const double x : {0.016, 0.044}) {
    for (const double resistance : {0.02, 0.1}) {
      const bore::BoreSection section{0.06, 2.0, 1.2, {{x, 0, 0.016, resistance}, {-x, 0, 0.016, resistance}}};
      CHECK(bore::solve_multipoles(section).change < 1e-6);
    }
  }
  const bore::BoreSection bare{0.06, 2.0, 1.2, {{0.016, 0, 0.016, 0}, {-0.016, 0, 0.016, 0}}};
  CHECK_THROWS_AS(bore::solve_multipoles(bare), NumericsError);
}

TEST_CASE("A section that cannot be built is refused with the pipe named") {
  const auto refused = [](std::vector<bore::SectionPipe> pipes) {
    try {
      bore::solve_multipoles({0.06, 1.5, 2.0, std::move(pipes)}, 1);
    } catch (const InputError& error) {
      return std::string(error.what());
    }
    return std::string("accepted");
  };
  CHECK_THAT(refused({{0.05, 0, 0.016, 0.1}}), Contains("pipe 1 reaches 66.0 mm"));
  CHECK_THAT(refused({{0.01, 0, 0.016, 0.1}, {-0.01, 0, 0.016, 0.1}}), Contains("pipes 1 and 2 overlap"));
  CHECK_THAT(refused({{0.02, 0, 0, 0.1}}), Contains("outer radius"));
  CHECK_THAT(refused({{0.02, 0, 0.01, -0.1}}), Contains("resistance of pipe 1"));
  CHECK_THAT(refused({}), Contains("without pipes"));
  CHECK(refused({{0.016, 0, 0.016, 0.1}, {-0.016, 0, 0.016, 0.1}}) == "accepted");
}
