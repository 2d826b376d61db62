
#include "engine/forecast/merging.hpp"
#include "engine/march/ambient.hpp"
#include "engine/march/state_layout.hpp"
#include "engine/simulation/group_deviation.hpp"
#include "engine/simulation/observe.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

namespace {

/// Twelve bores at random under a building's loads, on coarse cells. Invented.
model::Scenario scattered() {
  auto s = test::scenario(1, 1);
  test::Noise noise;
  model::Positions positions;
  for (int i = 0; i < 12; ++i) {
    positions.sites.push_back({4.5 * (i % 4) + 2 * noise(), 4.5 * (i / 4) + 2 * noise(), s.bore.top, s.bore.depth, 0});
  }
  s.layout = positions;
  s.loads = test::building(12 * 3000.0);
  s.run.step = 3600;
  s.run.grid.radial_cells = 30;
  s.run.grid.end_cell = 2;
  s.run.grid.growth = 1.3;
  s.run.grid.largest_cell = 20;
  return s;
}

model::Scenario merged(double bound) {
  auto s = scattered();
  s.run.groups = model::Run::Groups::merged;
  s.run.group_error = bound;
  return s;
}

struct Outcome {
  std::vector<record::Hour> hours;
  std::vector<double> neighbours;  ///< of each bore at the end, mean over the bore [K]
  double deviation = 0;            ///< as the run confirms it at the end [K]
  std::size_t groups = 0;
};

/// What its neighbours have done to a group's bores, mean over the bore.
double mean_of_neighbours(const march::Problem& problem, const march::State& state, std::size_t g) {
  double sum = 0, length = 0;
  for (std::size_t k = problem.groups[g].first; k < problem.groups[g].end; ++k) {
    const double share = problem.groups[g].fraction[k] * problem.grid.height(k);
    sum += share * state.neighbours[g * march::StateLayout(problem).row() + k];
    length += share;
  }
  return sum / length;
}

constexpr long half_a_year = 4368;  // whole days

Outcome marched(const model::Scenario& s, int threads = 1) {
  const assembly::Assembly assembly = forecast::assemble(s);
  simulation::Simulation simulation(assembly, threads, forecast::merging_hours(s.run.years));
  Outcome outcome;
  for (long hour = 0; hour < half_a_year; ++hour) outcome.hours.push_back(simulation.march_hour());
  march::Workers workers(1);
  march::State state = simulation::initial_state(assembly.problem, assembly.multirate);
  simulation::Statistics statistics;
  statistics.wall_heat.assign(assembly.problem.groups.size() * march::StateLayout(assembly.problem).row(), 0.0);
  simulation::restore(simulation.save(), state, statistics);
  march::update_neighbours(assembly.problem, assembly.multirate, state, workers);
  outcome.deviation = simulation::group_deviation(assembly, state, workers);
  for (const std::size_t g : assembly.groups.of_bore) {
    outcome.neighbours.push_back(mean_of_neighbours(assembly.problem, state, g));
  }
  outcome.groups = assembly.groups.size();
  return outcome;
}

double largest_difference(const std::vector<double>& a, const std::vector<double>& b) {
  double largest = 0;
  for (std::size_t i = 0; i < a.size(); ++i) largest = std::max(largest, std::abs(a[i] - b[i]));
  return largest;
}

}  // namespace

TEST_CASE("Under the least bound only bores that are equal by the layout share a group") {
  auto grid = test::scenario(3, 4);
  const auto equal = forecast::assemble(grid).groups;
  grid.run.groups = model::Run::Groups::merged;
  grid.run.group_error = 1e-6;
  CHECK(forecast::assemble(grid).groups.of_bore == equal.of_bore);
  const model::Scenario irregular = merged(1e-6);
  CHECK(forecast::assemble(irregular).groups.size() == 12);
}

TEST_CASE("Merged bores stand as far from their group as each marched on its own says, and within the bound") {
  const Outcome alone = marched(scattered());
  REQUIRE(alone.groups == 12);
  double eft_before = std::numeric_limits<double>::infinity();
  for (const double bound : {0.4, 0.15, 0.05}) {
    const Outcome joined = marched(merged(bound));
    REQUIRE(joined.groups > 1);
    REQUIRE(joined.groups < 12);
    CHECK(joined.deviation <= bound);
    // The march confirms what the bores really see: within a tenth, as the heat given to wrong bores is of second
    // order.
    const double really = largest_difference(joined.neighbours, alone.neighbours);
    CHECK(joined.deviation == Approx(really).epsilon(0.1));
    // The group stands for its bores' mean: what they give off together is right to second order.
    const double eft = test::largest_difference(joined.hours, alone.hours);
    CHECK(eft < 0.1 * bound);
    CHECK(eft < eft_before);
    eft_before = eft;
  }
}

TEST_CASE("Merged groups: the bits do not depend on the number of threads") {
  const Outcome one = marched(merged(0.3), 1), two = marched(merged(0.3), 2);
  CHECK(one.deviation == two.deviation);
  for (std::size_t i = 0; i < one.hours.size(); ++i) REQUIRE(one.hours[i].eft == two.hours[i].eft);
}

TEST_CASE("Merged groups: heat put in is stored or left by the surface, to round-off") {
  const model::Scenario scenario = merged(0.3);
  const assembly::Assembly assembly = forecast::assemble(scenario);
  REQUIRE(assembly.groups.size() < 12);
  simulation::Simulation simulation(assembly, 1, forecast::merging_hours(scenario.run.years));
  double turned = 0;
  for (int hour = 0; hour < hours_per_year; ++hour) {
    turned += std::abs(simulation.march_hour().heat_to_ground) * seconds_per_hour;
  }
  CHECK(std::abs(simulation.year_balance().residual) <= 1e-9 * turned);
  CHECK(simulation.statistics().group_deviation > 0);
}
