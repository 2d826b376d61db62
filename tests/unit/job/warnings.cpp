#include "engine/job/warnings.hpp"

#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;
using stillground::testing::Contains;

namespace {

/// Whether one of them says `what`.
bool says(const std::vector<Warning>& warnings, const std::string& what) {
  return std::any_of(warnings.begin(), warnings.end(),
                     [&](const Warning& w) { return w.text.find(what) != std::string::npos; });
}

/// Turbulent at the ground's 11 degC, laminar at -8 degC.
model::Scenario slow_when_cold() {
  auto s = test::scenario(1, 1);
  s.flow.rate = 0.42e-3;
  return s;
}

std::vector<Warning> before(const model::Scenario& s) {
  return job::warnings_before(assembly::assemble(s));
}

}  // namespace

TEST_CASE("Flow that would be laminar at the least EFT allowed is warned of before the run") {
  auto s = slow_when_cold();
  CHECK_FALSE(says(before(s), "at the least EFT allowed"));
  s.limits = {{"eft_min", model::Limit::Quantity::eft, model::Limit::Side::least, model::Limit::Over::hour, 265.15}};
  CHECK(says(before(s), "at the least EFT allowed, -8.0 degC, the flow in the loops is laminar"));
  s.flow.reynolds_min = 1000;
  CHECK_FALSE(says(before(s), "at the least EFT allowed"));
  s.flow.reynolds_min = 6000;
  s.limits.front().value = 283.15;
  CHECK(says(before(s), "at the least EFT allowed, 10.0 degC, the flow in the loops is "));
}

TEST_CASE("After the run the design hour is the coldest with flow, and its flow is judged") {
  auto s = slow_when_cold();
  s.heat_pump.reset();
  model::GroundLoads loads;
  loads.to_ground.values.assign(hours_per_year, -500.0);
  loads.to_ground.first_hour = hour_of_year(s.run.start);
  for (int hour = 40; hour < 46; ++hour) loads.to_ground.values[static_cast<std::size_t>(hour)] = -9000;
  s.loads = loads;
  assembly::Assembly assembly = assembly::assemble(s);
  simulation::Simulation simulation(assembly, 1);
  for (int hour = 0; hour < 60; ++hour) simulation.march_hour();
  CHECK(simulation.statistics().design.hour == 45);  // the last hour of the peak
  assembly.scenario.flow.reynolds_min = 3500;
  CHECK(
      says(job::warnings_after(assembly, simulation.statistics()), "at the design hour, 2027-07-02 21:00-22:00, when"));
  assembly.scenario.flow.reynolds_min = 1500;
  CHECK_FALSE(says(job::warnings_after(assembly, simulation.statistics()), "at the design hour"));
}

TEST_CASE("What a run warns of comes in the units that the scenario asks for") {
  auto s = slow_when_cold();
  s.units = UnitSystem::us;
  const assembly::Assembly assembly = assembly::assemble(s);
  simulation::Statistics statistics;
  statistics.flowing_hours = statistics.laminar_hours = statistics.beyond_heating_curve = 5;
  statistics.design = {268.15, 20, 1000};
  statistics.coldest_fluid = 258.15;
  statistics.coldest_wall = 270.15;
  statistics.warmest_fluid = 400.15;
  const std::vector<Warning> warnings = job::warnings_after(assembly, statistics);
  CHECK(warnings.size() == 8);
  CHECK(says(warnings, "the fluid fell to 5.0 degF"));
  for (const Warning& warning : warnings) CHECK_THAT(warning.line(), !Contains("degC"));
}
