#include "engine/assembly/ground_heat.hpp"

#include "engine/assembly/work_periods.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

namespace {

assembly::GroundHeats heats_of(const model::Scenario& s) {
  const assembly::Assembly assembly = assembly::assemble(s);
  return assembly::ground_heats(assembly);
}

/// Loads of a year that are zero but for some hours.
std::vector<double> at(std::initializer_list<std::pair<int, double>> hours) {
  std::vector<double> values(hours_per_year, 0);
  for (const auto& [hour, load] : hours) values[static_cast<std::size_t>(hour)] = load;
  return values;
}

constexpr double metres = 360;                   // four bores of 90 m
constexpr double day_after_new_year = 24 * 184;  // hours from July to January

}  // namespace

// Source: the first law; what the compressor adds is heat/COP.
TEST_CASE("Of a building's heat the ground gives what the compressor does not, and takes that too when cooling") {
  auto s = test::scenario(2, 2);
  s.heat_pump = model::HeatPump{{{263.15, 3.0}, {283.15, 5.0}}, {{283.15, 6.0}, {303.15, 4.0}}};
  s.limits = {{"eft_min", model::Limit::Quantity::eft, model::Limit::Side::least, model::Limit::Over::hour, 273.15},
              {"eft_max", model::Limit::Quantity::eft, model::Limit::Side::most, model::Limit::Over::hour, 298.15}};
  model::BuildingLoads loads;
  loads.heating.values = at({{10, 12e3}, {11, 20e3}, {12, 20e3}});
  loads.cooling.values = at({{4500, 9e3}});
  s.loads = loads;
  const assembly::Assembly assembly = assembly::assemble(s);
  const assembly::GroundHeats heats = assembly::ground_heats(assembly);
  CHECK(heats.taken.peak == Approx(20e3 * (1 - 1 / 4.0) / metres).epsilon(1e-12));  // COP 4 at the limit of 0 degC
  CHECK(heats.given.peak == Approx(9e3 * (1 + 1 / 4.5) / metres).epsilon(1e-12));   // COP 4.5 at the limit of 25 degC
  const double ground = assembly.fluid.reference;
  const double cop = 3.0 + (ground - 263.15) / 10;
  CHECK(heats.taken.year == Approx(52e3 * 3600 * (1 - 1 / std::min(cop, 5.0)) / metres).epsilon(1e-12));
  CHECK(heats.taken.hour == static_cast<long>(day_after_new_year) + 11);  // the first of the two
  const double heat_rate = 4 * 0.35e-3 * assembly.fluid.density * assembly.fluid.heat_capacity;
  CHECK(heats.taken.difference == Approx(15e3 / heat_rate).epsilon(1e-12));
}

TEST_CASE("The ground's own load is shared out among the metres of bore as it is") {
  auto s = test::scenario(2, 2, 2);
  s.heat_pump.reset();
  s.loads = model::ConstantGroundLoad{14e3};
  const assembly::GroundHeats heats = heats_of(s);
  CHECK_FALSE(heats.taken.any());
  CHECK(heats.taken.peak == 0);
  CHECK(heats.given.peak == Approx(14e3 / metres).epsilon(1e-12));
  CHECK(heats.given.year == Approx(14e3 * 8760 * 3600 / metres).epsilon(1e-12));
  CHECK(heats.given.hour == 0);
}

TEST_CASE("What is heated and cooled in one hour meets before it comes to the ground") {
  auto s = test::scenario(2, 2);
  s.heat_pump->hot_water_cop = {{273.15, 2.0}};
  model::BuildingLoads loads;
  loads.hot_water.values = at({{10, 8e3}, {20, 3e3}});
  loads.cooling_direct.values = at({{10, 6e3}});
  s.loads = loads;
  const assembly::GroundHeats heats = heats_of(s);
  CHECK(heats.given.peak == Approx((6e3 - 4e3) / metres).epsilon(1e-12));
  CHECK(heats.taken.peak == Approx(1.5e3 / metres).epsilon(1e-12));
}

TEST_CASE("Heat is shared by the bores that work, and a total flow too") {
  auto s = test::scenario(1, 1, 2);
  model::Positions field{{{0, 0, 1.8, 90}, {6, 0, 1.8, 90}, {12, 0, 1.8, 60}}};
  field.sites[2].start = seconds_per_year;
  s.layout = field;
  s.flow = {1.2e-3, model::Flow::Amount::total, model::Flow::Runs::with_load};
  s.heat_pump.reset();
  s.loads = model::ConstantGroundLoad{-3600};
  const assembly::Assembly assembly = assembly::assemble(s);
  const auto periods = assembly::work_periods(assembly);
  REQUIRE(periods.size() == 2);
  CHECK((periods[0].first == 0 && periods[0].end == 8760 && periods[1].end == 17520));
  CHECK((periods[0].bores == 2 && periods[1].bores == 3));
  CHECK((periods[0].length == 180 && periods[1].length == 240));
  CHECK(periods[0].flow == Approx(1.2e-3).epsilon(1e-12));
  CHECK(periods[1].flow == Approx(1.2e-3).epsilon(1e-12));
  CHECK(periods[0].most_bore == Approx(0.6e-3).epsilon(1e-12));
  CHECK(periods[1].least_bore == Approx(0.4e-3).epsilon(1e-12));
  const assembly::GroundHeats heats = assembly::ground_heats(assembly);
  CHECK(heats.taken.peak == Approx(20).epsilon(1e-12));
  CHECK(heats.taken.year == Approx(3600.0 * 2 * 8760 * 3600 / (180 + 240)).epsilon(1e-12));
}

TEST_CASE("Bores in series share a circuit's flow") {
  auto s = test::scenario(2, 2);
  s.flow.in_series = 2;
  s.flow.rate = 0.5e-3;
  const assembly::Assembly assembly = assembly::assemble(s);
  const auto periods = assembly::work_periods(assembly);
  REQUIRE(periods.size() == 1);
  CHECK(periods[0].flow == Approx(1.0e-3).epsilon(1e-12));
  CHECK(periods[0].most_bore == Approx(0.5e-3).epsilon(1e-12));
}
