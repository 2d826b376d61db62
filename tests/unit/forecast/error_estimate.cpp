#include "engine/forecast/error_estimate.hpp"

#include <numeric>

#include "engine/forecast/error_responses.hpp"
#include "engine/response/single_bore.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

namespace {

record::ErrorEstimate estimate(const model::Scenario& scenario) {
  return forecast::estimate_errors(assembly::assemble(scenario));
}

/// Shallow bores under a load of the ground's own that jumps every hour: little to march.
model::Scenario small(int rows, int columns) {
  model::Scenario s = test::scenario(rows, columns);
  s.bore.depth = 50;
  s.heat_pump.reset();
  s.flow.runs = model::Flow::Runs::always;
  model::HourlySeries load;
  test::Noise noise;
  for (int hour = 0; hour < hours_per_year; ++hour) load.values.push_back(3000.0 * rows * columns * (noise() - 0.3));
  s.loads = model::GroundLoads{load};
  return s;
}

}  // namespace

TEST_CASE("Each bore of a square of four sees two neighbours at its side and one across") {
  const std::vector<model::BoreSite> square{{0, 0, 1, 90, 0}, {6, 0, 1, 90, 0}, {0, 6, 1, 90, 0}, {6, 6, 1, 90, 0}};
  const forecast::Neighbourhood around = forecast::neighbourhood(square);
  CHECK(around.distance.front() == Approx(6));
  CHECK(around.count.front() == Approx(2));
  CHECK(std::accumulate(around.count.begin(), around.count.end(), 0.0) == Approx(3));
  // Shared out in the logarithm, the third neighbour keeps its place in it.
  double logarithm = 0;
  for (std::size_t j = 0; j < around.count.size(); ++j) logarithm += around.count[j] * std::log(around.distance[j]);
  CHECK(logarithm == Approx(2 * std::log(6) + std::log(std::sqrt(72))));
  CHECK(forecast::neighbourhood({{0, 0, 1, 90, 0}}).distance.empty());
}

TEST_CASE("A bore of the field is marched with the field's own cells, step and flow") {
  const model::Scenario s = test::scenario(3, 2);
  const assembly::Assembly field = assembly::assemble(s);
  const model::Scenario lone = response::lone_bore(field, {});
  const assembly::Assembly bore = assembly::assemble(lone);
  CHECK(bore.bores.size() == 1);
  CHECK(bore.problem.grid.r == field.problem.grid.r);
  CHECK(bore.problem.grid.z_faces == field.problem.grid.z_faces);
  CHECK(bore.multirate.step == field.multirate.step);
  CHECK(bore.fluid.flow_per_bore == Approx(field.fluid.flow_per_bore));
  const model::Scenario fine = response::refined(field, {2, 2, 4});
  const assembly::Assembly finer = assembly::assemble(fine);
  CHECK(finer.problem.nr() == 2 * field.problem.nr());
  CHECK(10 * finer.problem.nz() > 18 * field.problem.nz());
  CHECK(finer.multirate.step == field.multirate.step / 4);
}

// At 3600 s the hourly mean is one step's two stages: 0.31 K against 0.010 K at 1800 s for such loads, as the choice of
// the step was measured.
TEST_CASE("An hour's step is estimated to err many times more than half an hour's") {
  model::Scenario s = small(1, 1);
  const auto half_hour = estimate(s);
  s.run.step = 3600;
  const auto hour = estimate(s);
  CHECK(hour.step > 5 * half_hour.step);
  CHECK(hour.grid < 2 * half_hour.grid);
}

TEST_CASE("A finer grid is estimated to err less, by the grid alone") {
  model::Scenario s = small(1, 1);
  const auto normal = estimate(s);
  s.run.grid.level = model::GridChoice::Level::fine;
  const auto fine = estimate(s);
  CHECK(fine.grid < 0.75 * normal.grid);
  CHECK(fine.step == Approx(normal.step).epsilon(0.3));
}

TEST_CASE("The refresh interval costs nothing to a lone bore and the more the longer it is to a field") {
  CHECK(estimate(small(1, 1)).refresh == 0);
  model::Scenario s = small(1, 2);
  const double daily = estimate(s).refresh;
  s.run.refresh = 168 * 3600;
  const double weekly = estimate(s).refresh;
  CHECK(daily > 0);
  CHECK(weekly > 5 * daily);
}

TEST_CASE("Twice the load is twice the error") {
  model::Scenario s = small(1, 1);
  const auto once = estimate(s);
  for (double& heat : std::get<model::GroundLoads>(s.loads).to_ground.values) heat *= 2;
  const auto twice = estimate(s);
  CHECK(twice.total == Approx(2 * once.total).epsilon(1e-9));
}

TEST_CASE("What is never asked for anything is not in error") {
  model::Scenario s = test::scenario(1, 1);
  s.loads = model::ConstantGroundLoad{0};
  s.heat_pump.reset();
  CHECK(estimate(s).total == 0);
}

// Within a short stage nothing comes back from the inlet to the outlet, or a shade less than nothing: no COP curve is
// too steep for that.
TEST_CASE("Steps of two minutes on fine layers refuse no common COP curve") {
  const model::Scenario s = test::scenario(1, 1);
  const assembly::Assembly assembly = assembly::assemble(s);
  const model::Scenario fine = response::refined(assembly, {1, 4, 16});
  CHECK_NOTHROW(assembly::assemble(fine));
}
