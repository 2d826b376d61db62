// Source: none: the same ground with all of it at the short step
// Tier:      fast
#include <fmt/format.h>

#include <cmath>
#include <limits>

#include "tests/march_scenario.hpp"
#include "validation/harness/claim.hpp"

using namespace stillground;

namespace {

constexpr int years = 2;

/// Heat of `bores` bores of 90 m drawn anew every hour between -45 and +45 W/m: harder than any building. Every
/// `standing`-th hour there is none.
model::GroundLoads jumping_load(int bores, int standing = 1 << 30) {
  test::Noise noise;
  model::HourlySeries load;
  for (int hour = 0; hour < years * hours_per_year; ++hour) {
    const double heat = 2 * 45 * 90.0 * bores * (noise() - 0.5);
    load.values.push_back(hour % standing == standing - 1 ? 0 : heat);
  }
  return {load};
}

model::Scenario jumping(double conductivity) {
  auto s = test::scenario(1, 1, years);
  s.loads = jumping_load(1);
  s.heat_pump.reset();
  s.flow.runs = model::Flow::Runs::always;
  s.ground.layers.back().solid.conductivity = conductivity;
  return s;
}

/// Clay over quicker rock, bores that begin near the surface, fluid that stands every fifth hour: there an hour's EFT
/// is the topmost layer's, where axial conduction is strongest.
model::Scenario standing_at_times() {
  auto s = test::scenario(3, 3, years);
  s.ground.layers = {{9, "clay", {1.3, 2.6e6}}, {std::numeric_limits<double>::infinity(), "rock", {2.5, 2.2e6}}};
  s.loads = jumping_load(9, 5);
  s.heat_pump.reset();
  return s;
}

struct March {
  std::vector<record::Hour> hours;
  double residual = 0;  ///< largest of any year against the heat moved either way
};

March march(const model::Scenario& s) {
  const assembly::Assembly assembly = assembly::assemble(s);
  simulation::Simulation simulation(assembly, 1);
  March result;
  for (int year = 0; year < s.run.years; ++year) {
    if (year > 0) simulation.start_year();
    double turned = 0;
    for (int hour = 0; hour < hours_per_year; ++hour) {
      result.hours.push_back(simulation.march_hour());
      turned += std::abs(result.hours.back().heat_to_ground) * seconds_per_hour;
    }
    result.residual = std::max(result.residual, std::abs(simulation.year_balance().residual) / turned);
  }
  return result;
}

void compare(validation::Claim& times, validation::Claim& balance, const std::string& what, model::Scenario s) {
  s.run.clocks = model::Run::Clocks::automatic;
  const march::SlowModes slow = assembly::assemble(s).multirate.slow;
  const March two = march(s);
  s.run.clocks = model::Run::Clocks::one;
  const March one = march(s);
  times.between(what + ", modes on the slow clock", 1, 35, static_cast<double>(slow.count));
  times.absolute(what + ", largest difference [K]", 0, test::largest_difference(two.hours, one.hours), 0.005);
  balance.absolute(what + ", largest residual of a year [1]", 0, two.residual, 1e-9);
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::march);
  auto& times = check.claim({"two-clocks", "what hardly answers within six hours may be stepped every six hours",
                             validation::Origin::engine, "the same march with all at the short step",
                             "hourly EFT over two years: one bore under heat drawn at random every hour between -45 "
                             "and 45 W/m in three kinds "
                             "of ground; 3 x 3 bores in layers with fluid that stands every fifth hour; 2 x 2 bores "
                             "with heat pumps that pump with load alone",
                             "0.005 K: half of what the short step itself errs by under such loads"});
  auto& balance =
      check.claim({"two-clocks-balance", "with two clocks no heat is lost between them", validation::Origin::engine,
                   "the march's own books of heat, by conservation of energy", "the same marches, each year",
                   "1e-9 of the heat moved: round-off of many sums; a flux counted twice gives 1e-3"});
  compare(times, balance, "1.2 W/(m K)", jumping(1.2));
  compare(times, balance, "2.5 W/(m K)", jumping(2.5));
  compare(times, balance, "4.5 W/(m K)", jumping(4.5));
  compare(times, balance, "clay over rock, fluid standing every fifth hour", standing_at_times());
  compare(times, balance, "a building", test::scenario(2, 2, years));
  return check.finish();
}
