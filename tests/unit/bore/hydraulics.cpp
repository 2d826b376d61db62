#include "engine/bore/hydraulics.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "engine/bore/loop_type.hpp"
#include "engine/bore/pipes.hpp"
#include "tests/catch.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;

namespace {

model::Bore u_bore(const model::Loop& loop, double inside) {
  model::Bore bore;
  bore.diameter = 0.15;
  bore.loop = loop;
  bore.pipe = {"", inside + 0.007666, 0.003833, 0.4, 2.1e6, 1.5e-6};
  return bore;
}

materials::FluidState fluid_of(double density, double viscosity) {
  return {.density = density, .heat_capacity = 4000, .conductivity = 0.5, .viscosity = viscosity};
}

}  // namespace

// Reference: single_pipes.csv, made apart from the engine; eight digits printed.
TEST_CASE("A U takes the pressure of two straight legs and of its return bend") {
  double worst = 0;
  int rows = 0;
  for (const auto& row : reference_solutions::reference_table("single_pipes.csv")) {
    const double inside = std::stod(row.at("inside_m"));
    const double legs = 2 * 120 + bore::return_bend * inside;
    const double taken = bore::head(u_bore(model::SingleU{0.08}, inside), 120, 1e-3 * std::stod(row.at("flow_Ls")),
                                    fluid_of(std::stod(row.at("density")), std::stod(row.at("viscosity"))));
    worst = std::max(worst, std::abs(taken / legs / std::stod(row.at("Pa_per_m")) - 1));
    ++rows;
  }
  CHECK(rows == 24);
  CHECK(worst < 1e-6);  // digits of the reference
}

TEST_CASE("Two U's side by side take what one takes of half the flow, one after the other as much as two") {
  using Connection = model::DoubleU::Connection;
  const auto water = fluid_of(999.7, 0.0013059);
  const double single = bore::head(u_bore(model::SingleU{0.08}, 0.034494), 100, 0.4e-3, water);
  const auto two = [&](Connection connection, double flow) {
    return bore::head(u_bore(model::DoubleU{0.08, connection, true}, 0.034494), 100, flow, water);
  };
  CHECK(two(Connection::parallel, 0.8e-3) == Approx(single).epsilon(1e-12));
  CHECK(two(Connection::series, 0.4e-3) == Approx(2 * single).epsilon(1e-12));
}

// Each way by hand: f (L/d_h) rho v^2/2 with Colebrook's f found by its own fixed point.
TEST_CASE("A pipe within a pipe takes the pressure of its annulus and of its inner pipe") {
  const auto water = fluid_of(999.97, 1.5182e-3);
  model::Bore bore = u_bore(model::Coaxial{}, 0.1);
  std::get<model::Coaxial>(bore.loop).inner = {"", 0.05, 0.0046, 0.4, 2.1e6, 1.5e-6};
  const auto way = [&](double inner, double outer, double length) {
    const double hydraulic = outer - inner;
    const double v = 4e-3 / (std::numbers::pi / 4 * (outer * outer - inner * inner));
    const double reynolds = 999.97 * v * hydraulic / 1.5182e-3;
    REQUIRE(reynolds > 4000);
    double root = 0.2;
    for (int i = 0; i < 100; ++i) {
      root = 1 / (-2 * std::log10(1.5e-6 / hydraulic / 3.7 + 2.51 / (reynolds * root)));
    }
    return root * root * length / hydraulic * 999.97 * v * v / 2;
  };
  const double expected = way(0.05, 0.1, 100 + bore::return_bend * 0.05) + way(0, 0.0408, 100);
  CHECK(bore::head(bore, 100, 4e-3, water) == Approx(expected).epsilon(1e-9));
}

// Reference: area times 0.6096 m/s (2 ft/s) of the same pipes.
TEST_CASE("The widest way of a loop sets the flow that flushes it") {
  using Connection = model::DoubleU::Connection;
  CHECK(1e3 * bore::flow_for(u_bore(model::SingleU{0.08}, 0.034494), 0.6096) == Approx(0.570).margin(5e-4));
  CHECK(1e3 * bore::flow_for(u_bore(model::DoubleU{0.08, Connection::parallel, true}, 0.034494), 0.6096) ==
        Approx(2 * 0.570).margin(1e-3));
  CHECK(1e3 * bore::flow_for(u_bore(model::DoubleU{0.08, Connection::series, true}, 0.034494), 0.6096) ==
        Approx(0.570).margin(5e-4));
  model::Bore coaxial = u_bore(model::Coaxial{}, 0.1);
  std::get<model::Coaxial>(coaxial.loop).inner = {"", 0.05, 0.0046, 0.4, 2.1e6, 1.5e-6};
  const double annulus = bore::circle_area(0.1) - bore::circle_area(0.05);
  CHECK(bore::flow_for(coaxial, 0.6096) == Approx(0.6096 * annulus).epsilon(1e-12));
}

TEST_CASE("A loop's ways are those that its fluid passes in turn") {
  for (const bool inner_first : {false, true}) {
    model::Bore bore = u_bore(model::Coaxial{}, 0.1);
    auto& loop = std::get<model::Coaxial>(bore.loop);
    loop.inner = {"", 0.05, 0.0046, 0.4, 2.1e6, 7e-6};
    loop.down = inner_first ? model::Coaxial::Down::inner : model::Coaxial::Down::annulus;
    const auto ways = bore::loop_type(bore.loop).passages(bore);
    REQUIRE(ways.size() == 2);
    CHECK(ways[inner_first ? 1 : 0].within == 0.05);
    CHECK(ways[inner_first ? 0 : 1].within == 0);
    CHECK(ways[inner_first ? 0 : 1].roughness == 7e-6);
  }
}
