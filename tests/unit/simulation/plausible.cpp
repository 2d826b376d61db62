#include "engine/simulation/plausible.hpp"

#include <cmath>
#include <limits>
#include <string>

#include "engine/assembly/likely_causes.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;
using stillground::testing::Contains;

namespace {

constexpr double ice = 273.15;

/// What the stop says; empty where there is none.
template <class Look>
std::string stop(Look&& look) {
  try {
    look();
  } catch (const NumericsError& error) {
    CHECK(error.exit_status() == 3);
    return error.what();
  }
  return "";
}

/// A march as `run` does it, hour by hour under guard, for a day at most; what stops it.
std::string stop_of_first_day(const model::Scenario& s) {
  const assembly::Assembly assembly = assembly::assemble(s);
  const simulation::Plausible plausible(assembly);
  simulation::Simulation simulation(assembly, 1);
  return stop([&] {
    for (long hour = 0; hour < 24; ++hour) {
      const auto means = simulation.march_hour();
      plausible.fluid(means.eft, means.lft, hour);
    }
  });
}

model::Scenario winter(double heating_per_metre) {
  auto s = test::scenario(1, 1);
  model::BuildingLoads loads;
  loads.heating.values.assign(hours_per_year, heating_per_metre * 90);
  s.loads = loads;
  return s;
}

}  // namespace

TEST_CASE("Fluid outside -60 to 130 degC, or that is no number, stops a run with date, place and value") {
  const auto s = test::scenario(2, 1);
  const assembly::Assembly assembly = assembly::assemble(s);
  const simulation::Plausible plausible(assembly);
  const auto said = [&](double eft, double lft) { return stop([&] { plausible.fluid(eft, lft, 30); }); };
  CHECK(said(ice - 59, ice + 129).empty());
  CHECK_THAT(said(ice - 61, ice), Contains("stopped at 2027-07-02 06:00: the fluid that enters the heat pumps (EFT) "
                                           "came to -61.0 degC, beyond -60 degC to 130 degC"));
  CHECK_THAT(said(ice, ice + 131), Contains("the fluid that leaves the heat pumps came to 131.0 degC"));
  CHECK_THAT(said(-11500 + ice, ice), Contains("came to -11500.0 degC"));
  CHECK_THAT(said(1e154, ice), Contains("came to 1e+154 degC"));
  CHECK_THAT(said(ice, std::numeric_limits<double>::quiet_NaN()), Contains("came to no finite number"));
  CHECK_THAT(stop([&] { plausible.loops(ice + 200, 0); }), Contains("the fluid in the loops came to 200.0 degC"));
}

TEST_CASE("A bore wall outside what can be stops a run and is named by bore and depth") {
  const auto s = test::scenario(2, 1);
  const assembly::Assembly assembly = assembly::assemble(s);
  const simulation::Plausible plausible(assembly);
  const std::size_t layer = assembly.problem.groups[0].first;
  CHECK(stop([&] { plausible.walls({{ice - 59, 0, layer}, {ice + 60, 0, layer}}, 24); }).empty());
  CHECK_THAT(stop([&] {
               plausible.walls({{ice - 80, 0, layer}, {ice, 0, layer}}, 24);
             }),
             Contains("stopped at 2027-07-01 23:00: the ground at the wall of bore 1, 2 m deep, came to -80.0 degC"));

  simulation::Simulation simulation(assembly, 1);
  for (int hour = 0; hour < 24; ++hour) simulation.march_hour();
  const simulation::WallExtremes walls = simulation.walls();
  const auto shot = simulation.snapshot();
  double least = 1e9, most = -1e9;
  for (const double wall : shot.wall_temperature) {
    if (std::isnan(wall)) continue;
    least = std::min(least, wall);
    most = std::max(most, wall);
  }
  CHECK(walls.coldest.temperature == least);
  CHECK(walls.warmest.temperature == most);
}

TEST_CASE("A year's heat balance may stand open by a millionth of the heat turned over") {
  const auto s = test::scenario(2, 1);
  const assembly::Assembly assembly = assembly::assemble(s);
  const simulation::Plausible plausible(assembly);
  record::YearBalance balance;
  balance.residual = 0.9e5;
  CHECK(stop([&] { plausible.balance(balance, 1e11, 1); }).empty());
  balance.residual = -1.1e5;
  CHECK_THAT(stop([&] { plausible.balance(balance, 1e11, 2); }),
             Contains("stopped at 2029-07-01 00:00: in run-year 2 the heat balance does not close"));
  balance.residual = 1e-3;  // a field at rest: round-off
  CHECK(stop([&] { plausible.balance(balance, 0, 1); }).empty());
}

TEST_CASE("The balance of a field with hardly a load closes as well") {
  auto s = test::scenario(1, 2);
  s.loads = model::ConstantGroundLoad{0.01};
  s.heat_pump.reset();
  s.flow.runs = model::Flow::Runs::always;
  const assembly::Assembly assembly = assembly::assemble(s);
  simulation::Simulation simulation(assembly, 1);
  for (int hour = 0; hour < hours_per_year; ++hour) simulation.march_hour();
  CHECK(simulation.statistics().turned_over == Approx(0.01 * seconds_per_year));
  CHECK(stop([&] {
          simulation::Plausible(assembly).balance(simulation.year_balance(), simulation.statistics().turned_over, 1);
        }).empty());
}

TEST_CASE("Loads that no bore can give stop a march within its first day and are named as the cause") {
  CHECK(stop_of_first_day(winter(60)).empty());
  const std::string few = stop_of_first_day(winter(3300));
  CHECK_THAT(few, Contains("stopped at 2027-07-01 "));
  CHECK_THAT(few, Contains("likely causes, the likeliest first: heat of 2,600 W per metre of bore (usual: up to 70): "
                           "are the loads in W under a head that says kW, or bores left out?"));
  CHECK_THAT(stop_of_first_day(winter(60000)), Contains("W per metre of bore"));
}

TEST_CASE("A cause's figures have two digits and no powers of ten") {
  const std::string causes = assembly::likely_causes(assembly::assemble(winter(300)));
  CHECK_THAT(causes,
             Contains("heat of 230 W per metre of bore (usual: up to 70)") && Contains("(usual: up to 150 kWh/m)"));
  CHECK_THAT(causes, !Contains("e+"));
}

TEST_CASE("Where US units are asked for, what stopped a run and why is told in them") {
  auto s = winter(3300);
  s.units = UnitSystem::us;
  const std::string few = stop_of_first_day(s);
  CHECK_THAT(few, Contains("Btu/h per foot of bore (usual: up to 73)") && Contains("degF") && !Contains("degC"));
}

TEST_CASE("The likely cause is the figure that is farthest from the usual") {
  const auto first = [](const model::Scenario& s) {
    const std::string all = assembly::likely_causes(assembly::assemble(s));
    return all.substr(0, all.find(';'));
  };
  CHECK_THAT(first(winter(60)), Contains("of bore a year out of the ground for good"));
  auto slow = test::scenario(1, 1);
  slow.flow.rate = 0.35e-5;
  slow.flow.runs = model::Flow::Runs::always;
  CHECK_THAT(first(slow), Contains("flow of 0.0035 L/s a bore"));
  auto close = test::scenario(2, 2);
  close.layout = model::Grid{2, 2, 0.2};
  CHECK_THAT(first(close), Contains("bores 0.20 m apart"));
  auto both = winter(600);  // twice the usual heat, a fifteenth of the usual spacing
  both.layout = model::Grid{2, 2, 0.2};
  CHECK_THAT(first(both), Contains("bores 0.20 m apart"));
  auto hot = test::scenario(1, 1);
  hot.ground.undisturbed = model::MeanOverBore{ice + 54};
  CHECK_THAT(first(hot), Contains("undisturbed ground of 54.0 degC"));
  CHECK_THAT(first(test::scenario(1, 1)), Contains("none of the scenario's figures is out of the usual"));
}
