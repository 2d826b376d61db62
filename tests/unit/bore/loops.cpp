#include <cmath>
#include <complex>
#include <numbers>

#include "engine/bore/double_u.hpp"
#include "engine/bore/effective.hpp"
#include "engine/bore/leg_storage.hpp"
#include "engine/bore/loop_type.hpp"
#include "engine/bore/pipes.hpp"
#include "engine/bore/section_field.hpp"
#include "tests/catch.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;

namespace {

// An invented bore, wide enough for four legs.
model::Bore wide_bore(const model::Loop& loop) {
  model::Bore bore;
  bore.depth = 120;
  bore.diameter = 0.18;
  bore.loop = loop;
  bore.pipe = {"", 0.032, 0.0029, 0.42, 2.1e6, 1e-6};
  bore.grout = {"", {1.6, 3.0e6}};
  return bore;
}

model::DoubleU two_us(model::DoubleU::Connection connection, bool opposite_legs) {
  return {0.1, connection, opposite_legs};
}

bore::ModeResistances modes_of(const model::Bore& bore, double film = 0.01) {
  return bore::loop_type(bore.loop).resistances(bore, 2.3, {film, film, film});
}

double effective(const model::Bore& bore, double heat_rate) {
  const bore::LoopType& type = bore::loop_type(bore.loop);
  return bore::effective_resistance(type.network(bore.loop, modes_of(bore), type.capacities(bore, 4.1e6), 5e4),
                                    bore.depth, heat_rate);
}

bore::Amounts amounts(const model::Bore& bore) {
  return bore::loop_type(bore.loop).amounts(bore);
}

// Root mean square over the grout within `angle` of the x axis by a plain sum over a polar grid; its cells cut the
// pipes' edges.
double plain_root_mean_square(const bore::SectionField& field, double angle) {
  double sum = 0, area = 0;
  for (int i = 0; i < 300; ++i) {
    for (int j = 0; j < 600; ++j) {
      const auto z = std::polar((i + 0.5) / 300 * field.section.radius, angle * (2 * (j + 0.5) / 600 - 1));
      bool grout = true;
      for (const auto& pipe : field.section.pipes) grout = grout && std::abs(z - pipe.centre()) > pipe.outer_radius;
      if (!grout) continue;
      sum += std::pow(bore::grout_point(field, z).temperature, 2) * std::abs(z);
      area += std::abs(z);
    }
  }
  return std::sqrt(sum / area);
}

bore::Multipoles square_of_legs() {
  return bore::solve_multipoles(
      {0.09,
       1.6,
       2.3,
       {{0.05, 0, 0.016, 0.05}, {0, 0.05, 0.016, 0.05}, {-0.05, 0, 0.016, 0.05}, {0, -0.05, 0.016, 0.05}}});
}

}  // namespace

using Connection = model::DoubleU::Connection;

TEST_CASE("The modes of two U's are the eigenvalues of their legs' resistance matrix") {
  const model::Bore bore = wide_bore(two_us(Connection::series, true));
  const double leg = bore::pipe_resistance(bore.pipe, 0.01);
  const auto matrix = bore::solve_multipoles(bore::double_u_section(bore, 2.3, leg)).resistance;
  const auto modes = modes_of(bore);
  const Eigen::Vector4d alternate{1, -1, 1, -1}, first{1, 0, -1, 0}, second{0, 1, 0, -1};
  CHECK(modes.resistance[0] == Approx(matrix.sum() / 16).epsilon(1e-9));
  CHECK((matrix * alternate - modes.resistance[1] * alternate).norm() < 1e-9);
  CHECK((matrix * first - modes.resistance[2] * first).norm() < 1e-9);
  CHECK((matrix * second - modes.resistance[3] * second).norm() < 1e-9);
}

// Second method: a plain sum over the area.
TEST_CASE("In the odd modes of two U's a side is the quarter or the half round a leg") {
  const bore::Multipoles multipoles = square_of_legs();
  const bore::Filling grout_alone{0.0131, 0.008, 1e6, 1};  // pipe walls that store next to nothing
  const Eigen::RowVectorXd of_leg = multipoles.resistance.row(0);
  const auto alternate = bore::field_of(multipoles, Eigen::Vector4d{1, -1, 1, -1});
  CHECK(
      bore::alternate_storage(multipoles, grout_alone).root_mean_square ==
      Approx(plain_root_mean_square(alternate, std::numbers::pi / 4) / (of_leg[0] - of_leg[1] + of_leg[2] - of_leg[3]))
          .epsilon(0.005));  // rays 4 degrees apart
  const auto opposite = bore::field_of(multipoles, Eigen::Vector4d{1, 0, -1, 0});
  CHECK(bore::opposite_storage(multipoles, grout_alone).root_mean_square ==
        Approx(plain_root_mean_square(opposite, std::numbers::pi / 2) / (of_leg[0] - of_leg[2])).epsilon(0.005));
}

// R_b eta coth(eta): effective_resistance.csv's closed form (Hellstrom 1991).
TEST_CASE("The effective resistance of U's is that of the closed form for two streams") {
  for (const model::Loop& loop : {model::Loop{model::SingleU{0.1}}, model::Loop{two_us(Connection::parallel, true)},
                                  model::Loop{two_us(Connection::parallel, false)}}) {
    const model::Bore bore = wide_bore(loop);
    const auto modes = modes_of(bore);
    const double closed =
        bore::effective_resistance_uniform_wall({modes.resistance[0], 2 * modes.resistance[1]}, 120, 0.3, 4100);
    CHECK(effective(bore, 0.3 * 4100) == Approx(closed).epsilon(1e-10));
  }
}

TEST_CASE("With plenty of flow every loop's effective resistance is its R_b") {
  for (const model::Loop& loop :
       {model::Loop{two_us(Connection::series, true)}, model::Loop{two_us(Connection::series, false)},
        model::Loop{two_us(Connection::parallel, true)}}) {
    const model::Bore bore = wide_bore(loop);
    CHECK(effective(bore, 1e7) == Approx(modes_of(bore).resistance[0]).epsilon(1e-6));
  }
}

TEST_CASE("Two U's pass less heat between the legs when those that go down stand together") {
  const double together = effective(wide_bore(two_us(Connection::parallel, true)), 600);
  const double apart = effective(wide_bore(two_us(Connection::parallel, false)), 600);
  CHECK(together < apart);
}

TEST_CASE("Two U's resist less than one of the same pipe") {
  CHECK(modes_of(wide_bore(two_us(Connection::parallel, true))).resistance[0] <
        modes_of(wide_bore(model::SingleU{0.1})).resistance[0]);
}

// A steady annulus: R = ln(r_b/r_o)/(2 pi k_b) and so on, exactly (Carslaw & Jaeger 1959, 7.2 [number from memory]).
TEST_CASE("A coaxial loop's resistances are those of its rings in series") {
  model::Bore bore = wide_bore(model::Coaxial{{"", 0.063, 0.0058, 0.4, 2e6, 0}, model::Coaxial::Down::annulus});
  bore.pipe = {"", 0.11, 0.0063, 0.42, 2.1e6, 0};
  const auto modes = bore::loop_type(bore.loop).resistances(bore, 2.3, {0.02, 0.03, 0.04});
  const double two_pi = 2 * std::numbers::pi;
  CHECK(modes.resistance[0] ==
        Approx(0.04 + std::log(0.11 / (0.11 - 0.0126)) / (two_pi * 0.42) + std::log(0.18 / 0.11) / (two_pi * 1.6)));
  CHECK(modes.resistance[1] == Approx(0.02 + 0.03 + std::log(0.063 / (0.063 - 0.0116)) / (two_pi * 0.4)));
  // The mean temperature of pipe and grout by a plain sum over rings.
  double heat = 0, squares = 0, capacity = 0;
  for (int i = 0; i < 4000; ++i) {
    const double r = 0.0487 + (0.09 - 0.0487) * (i + 0.5) / 4000;
    const bool in_pipe = r < 0.055;
    const double above = in_pipe ? std::log(0.055 / r) / (two_pi * 0.42) + std::log(0.09 / 0.055) / (two_pi * 1.6)
                                 : std::log(0.09 / r) / (two_pi * 1.6);
    const double held = (in_pipe ? 2.1e6 : 3.0e6) * r;
    heat += held * above;
    squares += held * above * above;
    capacity += held;
  }
  const double mean = heat / capacity;
  CHECK(modes.share[0] == Approx(mean / modes.resistance[0]).epsilon(1e-4));
  CHECK(modes.spread == Approx(std::sqrt(squares / capacity - mean * mean) / modes.resistance[0]).epsilon(1e-4));
}

TEST_CASE("A metre of bore holds its pipes' water, and what is left is grout") {
  const double disc = std::numbers::pi / 4;
  const auto one = amounts(wide_bore(model::SingleU{0.1}));
  CHECK(one.pipe == 2);
  CHECK(one.fluid == Approx(2 * disc * 0.0262 * 0.0262));
  CHECK(one.grout == Approx(disc * (0.18 * 0.18 - 2 * 0.032 * 0.032)));
  CHECK(amounts(wide_bore(two_us(Connection::series, true))).fluid == Approx(2 * one.fluid));
  model::Bore coaxial = wide_bore(model::Coaxial{{"", 0.063, 0.0058, 0.4, 2e6, 0}, model::Coaxial::Down::annulus});
  coaxial.pipe = {"", 0.11, 0.0063, 0.42, 2.1e6, 0};
  CHECK(amounts(coaxial).fluid == Approx(disc * (0.0974 * 0.0974 - 0.063 * 0.063 + 0.0514 * 0.0514)));
}
