#include "engine/screen/estimate.hpp"

#include <Eigen/Dense>
#include <cmath>
#include <memory>

#include "engine/screen/flow_propagators.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;
using stillground::testing::Contains;

namespace {

model::Scenario small_site(int rows = 1, int columns = 1) {
  auto s = test::scenario(rows, columns);
  s.bore.depth = 60;
  return s;
}

/// All hours of a screening estimate.
std::vector<record::Hour> hours_of(const assembly::Assembly& assembly) {
  std::vector<record::Hour> hours;
  screen::estimate(assembly,
                   [&](std::span<const record::Hour> year) { hours.insert(hours.end(), year.begin(), year.end()); });
  return hours;
}

}  // namespace

TEST_CASE("Without load and season the fluid stays as warm as the ground") {
  auto s = small_site();
  s.ground.undisturbed = model::MeanOverBore{284};
  s.loads = model::ConstantGroundLoad{0};
  s.heat_pump.reset();
  s.flow.runs = model::Flow::Runs::always;
  const auto hours = hours_of(assembly::assemble(s));
  REQUIRE(hours.size() == 8760);
  for (const auto& hour : hours) REQUIRE(hour.eft == Approx(284).margin(1e-6));
}

TEST_CASE("The first months of a pair of bores are within 0.15 K of the march in any hour with load") {
  const auto s = small_site(1, 2);
  const assembly::Assembly assembly = assembly::assemble(s);
  const auto hours = hours_of(assembly);
  simulation::Simulation march(assembly, 1);
  double sum = 0, flowing = 0;
  for (std::size_t hour = 0; hour < 2000; ++hour) {
    const record::Hour there = march.march_hour();
    const record::Hour& here = hours[hour];
    REQUIRE(here.flow == Approx(there.flow));
    CHECK(here.heating == there.heating);
    if (there.flow == 0) continue;
    REQUIRE(std::abs(here.eft - there.eft) < 0.15);
    REQUIRE(here.lft - here.eft == Approx(there.lft - there.eft).margin(0.02));
    sum += here.eft - there.eft;
    ++flowing;
  }
  REQUIRE(flowing > 500);
  CHECK(std::abs(sum / flowing) < 0.02);
}

TEST_CASE("Bores half a metre apart are screened without their answers to each other running away") {
  auto s = small_site(5, 5);
  s.layout = model::Grid{5, 5, 0.5};
  s.loads = test::building(10000);
  s.run.years = 20;
  const assembly::Assembly assembly = assembly::assemble(s);
  const auto hours = hours_of(assembly);
  simulation::Simulation march(assembly, 1);
  for (std::size_t hour = 0; hour < 2000; ++hour) {
    const record::Hour there = march.march_hour();
    if (there.flow > 0) REQUIRE(std::abs(hours[hour].eft - there.eft) < 0.5);
  }
  // Steady from year to year but for what the ground still gives: far from the 1e10 K that it grew to.
  for (std::size_t hour = 0; hour < hours.size(); ++hour) REQUIRE(std::abs(hours[hour].eft - 283) < 30);
}

TEST_CASE("Bores that all but touch are refused where a screening would never come to its end") {
  auto s = small_site(2, 2);
  s.layout = model::Grid{2, 2, 0.151};
  s.run.years = 25;
  const assembly::Assembly assembly = assembly::assemble(s);
  try {
    hours_of(assembly);
    FAIL("not refused");
  } catch (const InputError& error) {
    CHECK(error.key() == "run.method");
  }
}

TEST_CASE("Thirteen modes tell an hour's outlet within 0.01 K of the whole circuit's at 50 W/m") {
  const bore::Network network = bore::make_network(bore::NetworkParts{.bore_resistance = 0.1,
                                                                      .internal_resistance = 0.4,
                                                                      .even_share = 0.4,
                                                                      .odd_share = 0.3,
                                                                      .grout_capacity = 4.5e4,
                                                                      .fluid_capacity = 3900.0,
                                                                      .even_spread = 0.2,
                                                                      .odd_wall_share = 0.2,
                                                                      .ground_capacity = 4e4});
  const screen::Circuit circuit({1, 1, 15, {-1, -0.7, -0.4, -0.1, 0.1, 0.4, 0.7, 1}},
                                {0.01, {{600, 0.02}, {9000, 0.03}}, 1e-7});
  const auto standing = screen::over_an_hour(circuit, circuit.rates(network, 0), 1800);
  const auto flowing = screen::over_an_hour(circuit, circuit.rates(network, 1600), 1800);
  const Eigen::MatrixXd modes = screen::modes(circuit, standing, flowing);
  const screen::HourlyPropagator few[] = {screen::on_modes(circuit, standing, modes),
                                          screen::on_modes(circuit, flowing, modes)};
  Eigen::VectorXd state = Eigen::VectorXd::Zero(circuit.size());
  state(circuit.profile()) = 1;
  std::array<double, screen::HourlyPropagator::columns> driven{};
  driven[screen::HourlyPropagator::profile] = 1;
  test::Noise noise;
  double most = 0;
  for (int hour = 0; hour < 500; ++hour) {
    const bool flows = noise() < 0.6;
    const double load = flows ? 12000 * (noise() - 0.5) : 0;  // 120 m
    state(circuit.load()) = driven[screen::HourlyPropagator::load] = load;
    state(circuit.ambient()) = driven[screen::HourlyPropagator::ambient] = 3 * std::sin(hour / 50.0);
    state(circuit.change()) = driven[screen::HourlyPropagator::change] = 0.05;
    const auto& whole = flows ? flowing : standing;
    const auto after = few[flows].times(driven);
    if (flows) most = std::max(most, std::abs(after[screen::HourlyPropagator::outlet] - whole.outlet * state));
    state = (whole.after * state).eval();
    CHECK(after[screen::HourlyPropagator::heat] == Approx(state(circuit.heat())).margin(1800));  // 0.5 W/m
    state(circuit.heat()) = 0;
    std::copy(after.begin(), after.begin() + screen::HourlyPropagator::modes, driven.begin());
  }
  CHECK(most > 0);
  CHECK(most < 0.01);
}

TEST_CASE("A circuit gives its heat to the wall and to what it stores") {
  const bore::Network network = bore::make_network(bore::NetworkParts{.bore_resistance = 0.1,
                                                                      .internal_resistance = 0.4,
                                                                      .even_share = 0.4,
                                                                      .odd_share = 0.3,
                                                                      .grout_capacity = 4.5e4,
                                                                      .fluid_capacity = 3900.0});
  const screen::Circuit circuit({1, 1, 15, std::vector<double>(8, 0.0)}, {0.01, {}, 0});
  const auto flowing = screen::over_an_hour(circuit, circuit.rates(network, 1600), 1800);
  Eigen::VectorXd state = Eigen::VectorXd::Zero(circuit.size());
  state(circuit.load()) = 6000;  // W into 120 m
  const Eigen::VectorXd after = flowing.after * state;
  // Streams at their own capacity, the even mode's nodes at half of the grout's each; odd modes keep no heat.
  double stored = 0;
  for (Eigen::Index layer = 0; layer < 8; ++layer) {
    const Eigen::Index at = 6 * layer;
    stored += 15 * (3900 * (after(at) + after(at + 1)) + 2.25e4 * (after(at + 2) + after(at + 3)));
  }
  CHECK(stored + 120 * after(circuit.heat()) == Approx(6000 * 3600.0).epsilon(1e-9));
}

TEST_CASE("Screening refuses bores that one step response cannot tell of") {
  auto s = small_site();
  s.layout = model::Positions{{{0, 0, 1.8, 60, 0}, {6, 0, 1.8, 60, seconds_per_year / 2}}};
  CHECK_THROWS_WITH(hours_of(assembly::assemble(s)), Contains("run.method") && Contains("method: march"));
}
