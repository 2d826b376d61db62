#include "engine/response/heat_history.hpp"

#include <algorithm>

#include "engine/forecast/error_responses.hpp"
#include "engine/forecast/restarts.hpp"
#include "engine/simulation/simulation.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

namespace {

response::HeatHistory foreseen(const model::Scenario& scenario) {
  const assembly::Assembly assembly = assembly::assemble(scenario);
  return response::predict_heat(assembly, forecast::error_responses(assembly).rise);
}

/// So slow a pump that the flow is near laminar (Re 2300 at about 1 degC), and heat drawn without a pause.
model::Scenario slow_flow() {
  model::Scenario s = test::scenario(1, 1);
  s.flow = {0.27e-3, model::Flow::Amount::per_bore, model::Flow::Runs::always};
  s.heat_pump.reset();
  s.loads = model::ConstantGroundLoad{-40 * 90};
  return s;
}

float largest(const std::vector<float>& values) {
  return *std::max_element(values.begin(), values.end());
}

}  // namespace

TEST_CASE("The heat foreseen of a ground load is the load itself, shared by the bores") {
  model::Scenario s = test::scenario(1, 2);
  s.heat_pump.reset();
  s.loads = model::ConstantGroundLoad{-3000};
  const auto history = foreseen(s);
  REQUIRE(history.before.size() == hours_per_year + 1);
  CHECK(history.before.back() == Approx(-1500.0 * hours_per_year));
}

// Through a heat pump the heat follows from the EFT predicted: 1 K of it is 0.1 of a COP of 4, 0.6 % of the heat.
TEST_CASE("Through a heat pump the year's heat is foreseen within a hundredth") {
  const model::Scenario s = test::scenario(1, 1);
  const assembly::Assembly assembly = assembly::assemble(s);
  const auto history = response::predict_heat(assembly, forecast::error_responses(assembly).rise);
  simulation::Simulation simulation(assembly, 1);
  double run_heat = 0, moved = 0, foreseen_heat = 0;
  for (long hour = 0; hour < hours_per_year; ++hour) {
    const double heat = simulation.march_hour().heat_to_ground;
    const auto i = static_cast<std::size_t>(hour);
    run_heat += std::abs(heat);
    foreseen_heat += std::abs(history.before[i + 1] - history.before[i]);
    moved += std::abs(heat - (history.before[i + 1] - history.before[i]));
  }
  CHECK(foreseen_heat == Approx(run_heat).epsilon(0.01));
  CHECK(moved < 0.01 * run_heat);
}

TEST_CASE("Heat drawn near laminar flow feeds an error back; a measured resistance or heat given off does not") {
  model::Scenario s = slow_flow();
  const float near_laminar = largest(foreseen(s).feedback);
  CHECK(near_laminar > 0.1F);
  s.loads = model::ConstantGroundLoad{40 * 90};
  CHECK(largest(foreseen(s).feedback) == 0);
  s = slow_flow();
  s.bore.resistance = model::MeasuredResistance{0.12, {}, {}};
  CHECK(largest(foreseen(s).feedback) == 0);
  s = slow_flow();
  s.flow.rate = 0.6e-3;
  CHECK(largest(foreseen(s).feedback) < 0.1F * near_laminar);
}

// Only where the pump stops is there something that no kernel explains.
TEST_CASE("Restarts are marched where the pump stops, and nowhere else") {
  model::Scenario s = test::scenario(1, 1);
  const assembly::Assembly stops = assembly::assemble(s);
  const auto left = forecast::restart_residual(stops, forecast::error_responses(stops));
  CHECK(left.step > 0.001);
  CHECK(left.layers > 0);
  s.flow.runs = model::Flow::Runs::always;
  const assembly::Assembly never = assembly::assemble(s);
  CHECK(forecast::restart_residual(never, forecast::error_responses(never)).step == 0);
}
