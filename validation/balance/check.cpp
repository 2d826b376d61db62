// Source: none: the engine's own heat, in and out against stored, by the first law of thermodynamics
// Tier:      full
#include <fmt/format.h>

#include <cmath>
#include <numbers>

#include "engine/base/temperature.hpp"
#include "tests/march_scenario.hpp"
#include "validation/harness/claim.hpp"

using namespace stillground;

namespace {

struct Case {
  std::string name;
  model::Scenario scenario;
  int from_year = 1;  ///< from which on all of its bores are there, so that what is stored can be added up outside
};

/// Bores that no symmetry makes equal, of several depths.
model::Positions mixed_depths() {
  return {{{0, 0, 1.8, 90, 0}, {7, 1, 1.8, 75.3, 0}, {3, 8, 1.2, 90, 0}, {12, 6, 1.8, 60, 0}, {10, 14, 1.8, 41, 0}}};
}

model::Scenario with_loop(const model::Loop& loop, const model::Pipe& pipe) {
  auto s = test::scenario(2, 1, 2);
  s.bore.loop = loop;
  s.bore.pipe = pipe;
  return s;
}

/// Loops other than one U.
void add_loops(std::vector<Case>& all) {
  using Connection = model::DoubleU::Connection;
  using Down = model::Coaxial::Down;
  const model::Pipe leg{"", 0.032, 0.0029, 0.42, 1.9e6, 0};
  const model::Pipe casing{"", 0.11, 0.0066, 0.42, 1.9e6, 0}, inner{"", 0.063, 0.0058, 0.42, 1.9e6, 0};
  all.push_back({"double U, one after the other", with_loop(model::DoubleU{0.09, Connection::series, false}, leg)});
  all.push_back({"the same, legs crossed", with_loop(model::DoubleU{0.09, Connection::series, true}, leg)});
  all.push_back({"double U, side by side", with_loop(model::DoubleU{0.09, Connection::parallel, false}, leg)});
  all.push_back({"coaxial, annulus down", with_loop(model::Coaxial{inner, Down::annulus}, casing)});
  all.push_back({"coaxial, inner pipe down", with_loop(model::Coaxial{inner, Down::inner}, casing)});
}

/// Bores that begin and end within the run; rules of flow.
void add_phases_and_flows(std::vector<Case>& all) {
  constexpr double day = 86400;
  all.push_back({"bores that start later and stop", test::scenario(1, 1, 2), 2});
  model::Positions positions = mixed_depths();
  positions.sites[1].start = 100 * day;
  positions.sites[2].start = (hours_per_year - 1) * seconds_per_hour;  // the last hour of the first year
  positions.sites[0].stop = 150 * day;
  positions.sites[3].stop = 500 * day;
  all.back().scenario.layout = positions;
  all.back().scenario.loads = test::building(18000);
  all.push_back({"circuits of two bores", test::scenario(2, 2, 2)});
  all.back().scenario.flow.in_series = 2;
  all.push_back({"circuits of two bores, double U after U",
                 with_loop(model::DoubleU{0.09, model::DoubleU::Connection::series, false},
                           {"", 0.032, 0.0029, 0.42, 1.9e6, 0})});
  all.back().scenario.flow.in_series = 2;
  all.push_back({"flow in three stages", test::scenario(2, 1, 2)});
  all.back().scenario.flow.varies = model::Flow::Varies::in_stages;
  all.back().scenario.flow.stages = 3;
  all.push_back({"flow with the load", test::scenario(2, 1, 2)});
  all.back().scenario.flow.varies = model::Flow::Varies::with_load;
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
  add_loops(all);
  add_phases_and_flows(all);
  return all;
}

double disc(double diameter) {
  return std::numbers::pi / 4 * diameter * diameter;
}

double ring(const model::Pipe& pipe) {
  return disc(pipe.outer_diameter) - disc(pipe.inner_diameter());
}

/// What a metre of bore stores per kelvin: grout with the pipes in it, all fluid that goes down, all that goes up.
struct Storage {
  double grout = 0, down = 0, up = 0;
};

/// `fluid`: rho c.
Storage storage(const model::Bore& bore, double fluid) {
  const auto* coaxial = std::get_if<model::Coaxial>(&bore.loop);
  const int pipes = coaxial ? 1 : std::holds_alternative<model::DoubleU>(bore.loop) ? 4 : 2;
  const double grout = bore.grout.solid.heat_capacity * (disc(bore.diameter) - pipes * disc(bore.pipe.outer_diameter)) +
                       bore.pipe.heat_capacity * pipes * ring(bore.pipe);
  if (!coaxial) {
    const double way = fluid * pipes / 2 * disc(bore.pipe.inner_diameter());
    return {grout, way, way};
  }
  // Half of the inner pipe's wall is at either stream's temperature.
  const double wall = coaxial->inner.heat_capacity * ring(coaxial->inner) / 2;
  const double within = fluid * disc(coaxial->inner.inner_diameter()) + wall;
  const double annulus = fluid * (disc(bore.pipe.inner_diameter()) - disc(coaxial->inner.outer_diameter)) + wall;
  const bool annulus_down = coaxial->down == model::Coaxial::Down::annulus;
  return {grout, annulus_down ? annulus : within, annulus_down ? within : annulus};
}

/// Heat above the undisturbed start [J], added up from a snapshot with areas and capacities of our own.
double stored(const assembly::Assembly& assembly, const record::Snapshot& shot) {
  const ground::Grid& grid = assembly.problem.grid;
  const Storage bore = storage(assembly.scenario.bore, assembly.fluid.density * assembly.fluid.heat_capacity);
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
        if (std::isnan(shot.grout[at])) continue;  // not drilled yet
        own += group.fraction[k] * bore.grout * shot.grout[at];
      }
      sum += group.members * height * own;
    }
    if (!std::isnan(shot.fluid_heat[g])) sum += group.members * shot.fluid_heat[g];
  }
  return sum;
}

/// What the snapshot says of a group's fluid against its temperatures at the cells' centres and our own capacities,
/// over the most by which these may differ: a cell holds fluid as warm as what leaves it, half of its change away.
double fluid_miss(const assembly::Assembly& assembly, const record::Snapshot& shot, std::size_t g) {
  const Storage bore = storage(assembly.scenario.bore, assembly.fluid.density * assembly.fluid.heat_capacity);
  const march::Group& group = assembly.problem.groups[g];
  double centres = 0, longest = 0, coldest = 1e9, warmest = 0;
  for (std::size_t k = group.first; k < group.end; ++k) {
    const double length = group.fraction[k] * assembly.problem.grid.height(k);
    const std::size_t at = g * assembly.problem.nz() + k;
    centres +=
        length * (bore.down * (shot.fluid_down[at] - zero_celsius) + bore.up * (shot.fluid_up[at] - zero_celsius));
    longest = std::max(longest, length);
    coldest = std::min({coldest, shot.fluid_down[at], shot.fluid_up[at]});
    warmest = std::max({warmest, shot.fluid_down[at], shot.fluid_up[at]});
  }
  return (shot.fluid_heat[g] - centres) / ((bore.down + bore.up) * longest * (warmest - coldest));
}

void fluids(validation::Check& check) {
  auto& claim =
      check.claim({"balance-fluid", "the fluid's heat in the balance is that of its recorded temperatures",
                   validation::Origin::engine, "capacities from areas and rho c, temperatures at the cells' centres",
                   "snapshot at noon of the 20th day of every case above: the fluid's heat of each group less that "
                   "added up outside, "
                   "over the fluid's capacity in the longest cell times the range of its temperatures",
                   "1: a cell's fluid is as warm as what leaves it, half of the cell's change from its centre; both "
                   "ways, half each"});
  for (const Case& c : cases()) {
    const assembly::Assembly assembly = assembly::assemble(c.scenario);
    simulation::Simulation simulation(assembly, 2);
    for (int hour = 0; hour < 20 * 24 - 12; ++hour) simulation.march_hour();
    const record::Snapshot shot = simulation.snapshot();
    for (std::size_t g = 0; g < assembly.groups.size(); ++g) {
      if (std::isnan(shot.fluid_heat[g])) continue;
      claim.absolute(fmt::format("{}, group {}", c.name, g), 0, fluid_miss(assembly, shot, g), 1);
    }
  }
}

void balances(validation::Check& check) {
  auto& by_engine = check.claim(
      {"balance-every-year", "heat put in is stored or has left through the surface, to round-off, every year",
       validation::Origin::engine, "the march's own books of heat, by the first law of thermodynamics",
       "residual that the engine writes into its result over the heat turned over (the year's sum of |Q| dt), two "
       "years hour by hour of invented sites under a heat pump",
       "1e-9: round-off of a year's sums; anything lost within a stage or a refresh would be far above"});
  auto& by_us = check.claim(
      {"balance-recounted", "the balance closes as well when what is stored is added up anew",
       validation::Origin::engine,
       "the engine's heat in and out against its own snapshots, by the first law of thermodynamics",
       "two years' heat to the ground, hour by hour, less what left through the surface, less the heat of all cells, "
       "grout and fluid added up from snapshots with radii, capacities and members; over the heat turned over; where "
       "bores start in the first year, over the second alone",
       "1e-7: snapshots hold single precision, 6e-8 of each cell"});
  for (const Case& c : cases()) {
    const assembly::Assembly assembly = assembly::assemble(c.scenario);
    simulation::Simulation simulation(assembly, 2);
    double before = stored(assembly, simulation.snapshot());
    double in = 0, turned = 0, surface = 0;
    for (int year = 1; year <= 2; ++year) {
      double this_year = 0;
      for (int hour = 0; hour < hours_per_year; ++hour) {
        const double heat = simulation.march_hour().heat_to_ground * seconds_per_hour;
        if (year >= c.from_year) in += heat;
        this_year += std::abs(heat);
      }
      const record::YearBalance balance = simulation.year_balance();
      by_engine.absolute(fmt::format("{}, year {}", c.name, year), 0, balance.residual / this_year, 1e-9);
      simulation.start_year();
      if (year < c.from_year) {
        before = stored(assembly, simulation.snapshot());
        continue;
      }
      surface += balance.surface;
      turned += this_year;
    }
    by_us.absolute(c.name, 0, (in - surface - (stored(assembly, simulation.snapshot()) - before)) / turned, 1e-7);
  }
}

void threads(validation::Check& check) {
  auto& claim = check.claim({"equal-threads", "the bits do not depend on the number of threads",
                             validation::Origin::engine, "the same computation done again",
                             "five bores of mixed depths (five groups), 60 days under a heat pump on 2 and 4 threads "
                             "against 1: EFT of every hour, and bytes of the whole state that differ",
                             "0: each group is summed by one thread in one order"});
  auto s = test::scenario(1, 1);
  s.layout = mixed_depths();
  s.loads = test::building(18000);
  const assembly::Assembly assembly = assembly::assemble(s);
  for (const int count : {2, 4}) {
    simulation::Simulation alone(assembly, 1), together(assembly, count);
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
  fluids(check);
  threads(check);
  return check.finish();
}
