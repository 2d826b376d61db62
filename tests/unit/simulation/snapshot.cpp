#include <cmath>

#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

namespace {

/// A long and slow lone bore under constant heat. Invented.
model::Scenario slow_bore(model::Flow::Runs runs) {
  auto s = test::scenario(1, 1);
  s.bore.depth = 250;
  s.flow = {0.12e-3, model::Flow::Amount::per_bore, runs};
  s.heat_pump.reset();
  s.loads = model::ConstantGroundLoad{runs == model::Flow::Runs::always ? -5000.0 : 0.0};
  return s;
}

record::Snapshot after(const assembly::Assembly& assembly, int hours) {
  simulation::Simulation simulation(assembly, 1);
  for (int hour = 0; hour < hours; ++hour) simulation.march_hour();
  return simulation.snapshot();
}

}  // namespace

// At a cell's centre the fluid is as warm as the mean of what comes in and what leaves; so from one passage to the next
// it changes by twice the way from passage to centre, and down and up all changes add up to what the bore gives off.
TEST_CASE("From centre to centre down the bore and up again the recorded fluid takes up the bore's heat") {
  const assembly::Assembly assembly = assembly::assemble(slow_bore(model::Flow::Runs::always));
  const record::Snapshot shot = after(assembly, 48);
  const march::Group& group = assembly.problem.groups[0];
  double alternating = 0, sign = -1;
  for (std::size_t k = group.first; k < group.end; ++k, sign = -sign) alternating += 2 * sign * shot.fluid_down[k];
  for (std::size_t k = group.end; k-- > group.first; sign = -sign) alternating += 2 * sign * shot.fluid_up[k];
  // Outlet less inlet, whatever the inlet: there are as many centres down as up.
  const double warmed = 5000 / (assembly.fluid.flow_per_bore * assembly.fluid.heat_capacity);
  CHECK(alternating == Approx(warmed).epsilon(1e-8));
}

TEST_CASE("Standing fluid is recorded as it stands, and its heat is that of its temperatures") {
  const assembly::Assembly assembly = assembly::assemble(slow_bore(model::Flow::Runs::with_load));
  for (const int hours : {0, 5}) {
    const record::Snapshot shot = after(assembly, hours);
    const march::Group& group = assembly.problem.groups[0];
    double heat = 0;
    for (std::size_t k = group.first; k < group.end; ++k) {
      const auto& capacity = assembly.fluid.capacities.stream;
      heat += group.fraction[k] * assembly.problem.grid.height(k) *
              (capacity[0] * (shot.fluid_down[k] - 273.15) + capacity[1] * (shot.fluid_up[k] - 273.15));
      if (k > group.first + 2 && k + 2 < group.end)
        CHECK(shot.fluid_down[k] == Approx(shot.undisturbed[k]).margin(0.05));
    }
    CHECK(shot.fluid_heat.at(0) == Approx(heat).epsilon(1e-12));
  }
}
