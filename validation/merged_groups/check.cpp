// Source: none: the same bores marched each on its own
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "engine/forecast/merging.hpp"
#include "tests/march_scenario.hpp"
#include "validation/harness/claim.hpp"

using namespace stillground;

namespace {

/// Bores scattered about the places of a square grid under a building's loads and a heat pump that draws more than is
/// given back, on coarse cells. Invented.
model::Scenario scattered(int side) {
  model::Scenario s = test::scenario(side, side, 2);
  test::Noise noise;
  model::Positions positions;
  for (int i = 0; i < side * side; ++i) {
    positions.sites.push_back(
        {6 * (i % side) + 2 * noise(), 6 * (i / side) + 2 * noise(), s.bore.top, s.bore.depth, 0});
  }
  s.layout = positions;
  s.run.step = 3600;
  s.run.grid.radial_cells = 30;
  s.run.grid.end_cell = 2;
  s.run.grid.growth = 1.3;
  s.run.grid.largest_cell = 20;
  return s;
}

struct Outcome {
  std::size_t groups = 0;
  std::vector<double> eft;                 ///< [hour with flow] [K]
  std::vector<std::vector<double>> walls;  ///< [instant][bore], mean over the bore [K]
  double deviation = 0;                    ///< as the run confirms it [K]
};

std::vector<double> walls_of(const assembly::Assembly& assembly, const record::Snapshot& shot) {
  const march::Problem& problem = assembly.problem;
  std::vector<double> walls;
  for (const std::size_t g : assembly.groups.of_bore) {
    double sum = 0, length = 0;
    for (std::size_t k = problem.groups[g].first; k < problem.groups[g].end; ++k) {
      const double share = problem.groups[g].fraction[k] * problem.grid.height(k);
      sum += share * shot.wall_temperature[g * problem.nz() + k];
      length += share;
    }
    walls.push_back(sum / length);
  }
  return walls;
}

Outcome marched(const model::Scenario& scenario) {
  const assembly::Assembly assembly = forecast::assemble(scenario);
  const auto instants = forecast::merging_hours(scenario.run.years);
  simulation::Simulation simulation(assembly, 1, assembly.merges() ? instants : std::vector<long>{});
  Outcome outcome;
  outcome.groups = assembly.groups.size();
  while (!simulation.finished()) {
    const record::Hour hour = simulation.march_hour();
    if (hour.flow > 0) outcome.eft.push_back(hour.eft);
    if (std::binary_search(instants.begin(), instants.end(), simulation.statistics().hour)) {
      outcome.walls.push_back(walls_of(assembly, simulation.snapshot()));
    }
  }
  outcome.deviation = simulation.statistics().group_deviation;
  return outcome;
}

double largest_difference(const std::vector<double>& a, const std::vector<double>& b) {
  double largest = 0;
  for (std::size_t i = 0; i < a.size(); ++i) largest = std::max(largest, std::abs(a[i] - b.at(i)));
  return largest;
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::march);
  auto& claim = check.claim(
      {"merged-groups", "bores that are merged into groups differ from bores of their own by less than the bound",
       validation::Origin::engine, "the same scenario with groups: none, a march of ours with a grid for every bore",
       "25 bores scattered at 6 m, two years of a building's loads: largest difference at the merging hours of any "
       "bore's wall, mean over its length, and of any hour's EFT with flow [K]; what the run confirms of its own [K]",
       "run.group_error, the bound that the user gives"});
  model::Scenario scenario = scattered(5);
  scenario.run.groups = model::Run::Groups::none;
  const Outcome alone = marched(scenario);
  scenario.run.groups = model::Run::Groups::merged;
  for (const double bound : {0.4, 0.2, 0.1, 0.05}) {
    scenario.run.group_error = bound;
    const Outcome merged = marched(scenario);
    double walls = 0;
    for (std::size_t i = 0; i < alone.walls.size(); ++i) {
      walls = std::max(walls, largest_difference(merged.walls.at(i), alone.walls[i]));
    }
    const std::string at = fmt::format("{:g} K, {} groups: ", bound, merged.groups);
    claim.between(at + "walls", 0, bound, walls);
    claim.between(at + "EFT", 0, bound, largest_difference(merged.eft, alone.eft));
    claim.between(at + "confirmed, no less than the walls'", walls, bound, merged.deviation);
  }
  return check.finish();
}
