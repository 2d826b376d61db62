// Source: first law of thermodynamics; nothing else is needed to judge a balance
// Tier:      full
#include <fmt/format.h>

#include <cmath>
#include <numbers>

#include "tests/march_scenario.hpp"
#include "validation/rig/claim.hpp"

using namespace stillground;

namespace {

struct Case {
  std::string name;
  model::Scenario scenario;
};

/// Bores that no symmetry makes equal, of several depths.
model::Positions mixed_depths() {
  return {{{0, 0, 1.8, 90, 0}, {7, 1, 1.8, 75.3, 0}, {3, 8, 1.2, 90, 0}, {12, 6, 1.8, 60, 0}, {10, 14, 1.8, 41, 0}}};
}

std::vector<Case> cases() {
  std::vector<Case> all;
  all.push_back({"lone bore, pump with the load", test::scenario(1, 1, 2)});
  all.push_back({"3 x 3, pump with the load", test::scenario(3, 3, 2)});
  all.push_back({"3 x 3, pump always on", test::scenario(3, 3, 2)});
  all.back().scenario.flow.runs = model::Flow::Runs::always;
  all.push_back({"six layers", test::scenario(1, 1, 2)});
  all.back().scenario.ground.layers = {
      {1, "made ground", {0.8, 1.6e6}}, {6.5, "clay", {1.3, 2.6e6}},
      {21, "sand", {2.1, 2.4e6}},       {23, "coal", {0.3, 1.8e6}},
      {70, "sandstone", {3.6, 2.1e6}},  {std::numeric_limits<double>::infinity(), "limestone", {2.5, 2.2e6}}};
  all.push_back({"film at the surface", test::scenario(2, 1, 2)});
  std::get<model::SeasonalSurface>(all.back().scenario.ground.undisturbed).surface_film = 5;
  all.push_back({"surface that warms", test::scenario(2, 1, 2)});
  std::get<model::SeasonalSurface>(all.back().scenario.ground.undisturbed).trend = 0.04 / seconds_per_year;
  all.push_back({"mixed depths", test::scenario(1, 1, 2)});
  all.back().scenario.layout = mixed_depths();
  all.back().scenario.loads = test::building(18000);
  return all;
}

/// Heat above the undisturbed start [J], added up from a snapshot with areas and capacities of our own.
double stored(const run::Assembly& assembly, const record::Snapshot& shot) {
  const ground::Grid& grid = assembly.problem.grid;
  const model::Bore& bore = assembly.scenario.bore;
  const auto disc = [](double diameter) { return std::numbers::pi / 4 * diameter * diameter; };
  const double pipes = 2 * (disc(bore.pipe.outer_diameter) - disc(bore.pipe.inner_diameter()));
  const double grout = bore.grout.solid.heat_capacity * (disc(bore.diameter) - 2 * disc(bore.pipe.outer_diameter)) +
                       bore.pipe.heat_capacity * pipes;
  const double leg = assembly.fluid.density * assembly.fluid.heat_capacity * disc(bore.pipe.inner_diameter());
  double sum = 0;
  for (std::size_t g = 0; g < assembly.groups.size(); ++g) {
    const march::Group& group = assembly.problem.groups[g];
    for (std::size_t k = 0; k < grid.nz(); ++k) {
      const double height = grid.z_faces[k + 1] - grid.z_faces[k];
      double own = 0;
      for (std::size_t i = 0; i < grid.nr(); ++i) {
        const double area = disc(2 * grid.r_faces[i + 1]) - disc(2 * grid.r_faces[i]);
        own += grid.solid[k].heat_capacity * area * static_cast<double>(shot.rise[(g * grid.nz() + k) * grid.nr() + i]);
      }
      const std::size_t at = g * grid.nz() + k;
      if (group.fraction[k] > 0) {
        own += group.fraction[k] * (grout * shot.grout[at] + leg * (shot.fluid_down[at] + shot.fluid_up[at]));
      }
      sum += group.members * height * own;
    }
  }
  return sum;
}

void balances(validation::Check& check) {
  auto& by_engine = check.claim(
      {"balance-every-year", "heat put in is stored or has left through the surface, to round-off, every year",
       validation::Origin::computed, "first law of thermodynamics",
       "residual that the engine writes into its result over the heat turned over (the year's sum of |Q| dt), two "
       "years hour by hour of invented sites under a heat pump",
       "1e-9: round-off of a year's sums; anything lost within a stage or a refresh would be far above"});
  auto& by_us = check.claim(
      {"balance-outside", "the balance closes as well when what is stored is added up outside the engine",
       validation::Origin::computed, "first law of thermodynamics",
       "two years' heat to the ground, hour by hour, less what left through the surface, less the heat of all cells, "
       "grout and fluid added up from snapshots with radii, capacities and members; over the heat turned over",
       "1e-7: snapshots hold single precision, 6e-8 of each cell"});
  for (const Case& c : cases()) {
    const run::Assembly assembly = run::assemble(c.scenario);
    run::Simulation simulation(assembly, 2);
    const double before = stored(assembly, simulation.snapshot());
    double in = 0, turned = 0, surface = 0;
    for (int year = 1; year <= 2; ++year) {
      double this_year = 0;
      for (int hour = 0; hour < hours_per_year; ++hour) {
        const double heat = simulation.march_hour().heat_to_ground * seconds_per_hour;
        in += heat;
        this_year += std::abs(heat);
      }
      const record::YearBalance balance = simulation.year_balance();
      by_engine.absolute(fmt::format("{}, year {}", c.name, year), 0, balance.residual / this_year, 1e-9);
      surface += balance.surface;
      turned += this_year;
      simulation.start_year();
    }
    by_us.absolute(c.name, 0, (in - surface - (stored(assembly, simulation.snapshot()) - before)) / turned, 1e-7);
  }
}

void threads(validation::Check& check) {
  auto& claim = check.claim({"equal-threads", "the bits do not depend on the number of threads",
                             validation::Origin::computed, "the same computation done again",
                             "five bores of mixed depths (five groups), 60 days under a heat pump on 2 and 4 threads "
                             "against 1: EFT of every hour, and bytes of the whole state that differ",
                             "0: each group is summed by one thread in one order"});
  auto s = test::scenario(1, 1);
  s.layout = mixed_depths();
  s.loads = test::building(18000);
  const run::Assembly assembly = run::assemble(s);
  for (const int count : {2, 4}) {
    run::Simulation alone(assembly, 1), together(assembly, count);
    double largest = 0;
    for (int hour = 0; hour < 60 * 24; ++hour) {
      const double miss = std::abs(alone.march_hour().eft - together.march_hour().eft);
      if (!(miss <= largest)) largest = miss;
    }
    const auto one = alone.save(), other = together.save();
    double unlike = one.size() == other.size() ? 0 : static_cast<double>(one.size());
    for (std::size_t i = 0; i < std::min(one.size(), other.size()); ++i) unlike += one[i] != other[i];
    claim.absolute(fmt::format("{} threads, largest difference of the EFT [K]", count), 0, largest, 0);
    claim.absolute(fmt::format("{} threads, bytes of the state that differ", count), 0, unlike, 0);
  }
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::march);
  balances(check);
  threads(check);
  return check.finish();
}
