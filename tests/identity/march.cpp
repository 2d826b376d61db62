
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

TEST_CASE("Bores grouped by symmetry march like bores each on its own") {
  auto grouped = test::scenario(3, 2);
  auto lone = grouped;
  lone.run.groups = model::Run::Groups::none;
  REQUIRE(assembly::assemble(grouped).groups.size() == 2);
  REQUIRE(assembly::assemble(lone).groups.size() == 6);
  // 1e-10 K: the sums run in another order, nothing else differs.
  CHECK(test::largest_difference(test::march(grouped, 2500), test::march(lone, 2500)) < 1e-10);
}

TEST_CASE("Layers of equal rock are one rock") {
  auto layered = test::scenario(1, 2);
  layered.ground.layers = {{1.8, "upper", {2.5, 2.2e6}},
                           {91.8, "middle", {2.5, 2.2e6}},
                           {std::numeric_limits<double>::infinity(), "lower", {2.5, 2.2e6}}};
  auto one = layered;
  one.ground.layers = {layered.ground.layers.back()};
  // The boundaries lie on the bore's ends, where faces are in any case: the very same numbers.
  CHECK(test::largest_difference(test::march(layered, 1000), test::march(one, 1000)) == 0);
}

TEST_CASE("The bits do not depend on the number of threads") {
  const auto s = test::scenario(3, 3);
  const auto one = test::march(s, 400, 1);
  for (const int threads : {2, 3}) {
    const auto more = test::march(s, 400, threads);
    for (std::size_t i = 0; i < one.size(); ++i) {
      REQUIRE(one[i].eft == more[i].eft);
      REQUIRE(one[i].heat_to_ground == more[i].heat_to_ground);
    }
  }
}

TEST_CASE("A march resumed from its checkpoint goes on with the same bits") {
  const auto s = test::scenario(2, 2);
  const assembly::Assembly assembly = assembly::assemble(s);
  simulation::Simulation through(assembly, 1), first(assembly, 1), second(assembly, 1);
  for (int hour = 0; hour < 731; ++hour) {
    through.march_hour();
    first.march_hour();
  }
  second.restore(first.save());
  for (int hour = 0; hour < 300; ++hour) {
    const auto a = through.march_hour();
    const auto b = second.march_hour();
    REQUIRE(a.eft == b.eft);
    REQUIRE(a.power == b.power);
  }
  CHECK(through.save() == second.save());
}

TEST_CASE("A checkpoint of another grid is refused") {
  const auto small = test::scenario(1, 1);
  const auto large = test::scenario(2, 1);
  const assembly::Assembly one = assembly::assemble(small), other = assembly::assemble(large);
  simulation::Simulation from(one, 1), to(other, 1);
  auto deeper = small;
  deeper.bore.depth = 190;
  const assembly::Assembly third = assembly::assemble(deeper);
  simulation::Simulation unlike(third, 1);
  CHECK_THROWS_AS(unlike.restore(from.save()), InputError);
}

TEST_CASE("Heat put in is stored or left by the surface, every year, to round-off") {
  for (const bool always : {false, true}) {
    auto s = test::scenario(2, 2, 2);
    if (always) s.flow.runs = model::Flow::Runs::always;
    const assembly::Assembly assembly = assembly::assemble(s);
    simulation::Simulation simulation(assembly, 1);
    for (int year = 0; year < 2; ++year) {
      double turned = 0;
      for (int hour = 0; hour < hours_per_year; ++hour)
        turned += std::abs(simulation.march_hour().heat_to_ground) * 3600;
      const auto balance = simulation.year_balance();
      CHECK(std::abs(balance.residual) <= 1e-9 * turned);  // the sum of |Q| dt
      CHECK(balance.in == Approx(balance.stored + balance.surface + balance.deep).epsilon(1e-6));
      simulation.start_year();
    }
  }
}

// First law at the heat pump: what the ground gets is what the building gives and takes and what the compressor adds.
TEST_CASE("Building, compressor and ground exchange no more heat than there is") {
  for (const auto& hour : test::march(test::scenario(2, 1), 3000)) {
    CHECK(hour.heat_to_ground == Approx(hour.cooling - hour.heating + hour.power).margin(1e-6));
  }
}

TEST_CASE("With no flow the hour has no flow and no heat, and the fluid drifts towards its ground") {
  auto s = test::scenario(1, 1);
  model::BuildingLoads idle;
  idle.heating.values.assign(hours_per_year, 0.0);
  s.loads = idle;
  const auto hours = test::march(s, 200);
  for (const auto& hour : hours) {
    CHECK(hour.flow == 0);
    CHECK(hour.heat_to_ground == 0);
  }
}

TEST_CASE("Undisturbed ground stays undisturbed without load") {
  auto s = test::scenario(2, 2);
  s.ground.undisturbed = model::MeanOverBore{285};
  s.loads = model::ConstantGroundLoad{0};
  s.heat_pump.reset();
  s.flow.runs = model::Flow::Runs::always;
  for (const auto& hour : test::march(s, 1000)) CHECK(hour.eft == Approx(285).margin(1e-9));
}

TEST_CASE("Twice the bores under twice the load far apart are the bore alone") {
  auto one = test::scenario(1, 1);
  one.loads = model::ConstantGroundLoad{-4000};
  one.heat_pump.reset();
  auto two = one;
  two.layout = model::Grid{1, 2, 280};  // a year's heat does not reach so far
  two.loads = model::ConstantGroundLoad{-8000};
  CHECK(test::largest_difference(test::march(one, 2000), test::march(two, 2000)) < 1e-9);
}
