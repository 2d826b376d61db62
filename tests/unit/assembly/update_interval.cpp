#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

#include "engine/forecast/error_estimate.hpp"
#include "engine/march/update_stability.hpp"
#include "engine/materials/fluid.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

namespace {

/// Bores on a square at one spacing in one rock, fluid that always flows, and a load that keeps changing.
model::Scenario close_bores(int rows, int columns, double spacing, double conductivity = 2.5) {
  auto s = test::scenario(rows, columns);
  s.layout = model::Grid{rows, columns, spacing};
  s.ground.layers = {{std::numeric_limits<double>::infinity(), "rock", {conductivity, 2.2e6}}};
  s.flow.runs = model::Flow::Runs::always;
  s.heat_pump.reset();
  model::GroundLoads loads;
  test::Noise noise;
  for (int hour = 0; hour < hours_per_year; ++hour)
    loads.to_ground.values.push_back(1000.0 * rows * columns * (noise() - 0.5));
  s.loads = loads;
  return s;
}

/// Growth per update interval of `interval` s by the bound.
double bound(const assembly::Assembly& assembly, double interval) {
  assembly::FlowRegimes regimes(assembly.scenario, assembly.fluid, assembly.problem.grid);
  const double warm = materials::valid_range(assembly.scenario.fluid).warmest;
  return march::update_growth(assembly.problem, regimes.flowing(warm).march, interval);
}

/// Largest distance of the EFT from the ground's own temperature in the last tenth of `days` with the update interval
/// forced.
double swing(assembly::Assembly& assembly, double interval, int days) {
  assembly.multirate.update_interval = interval;
  assembly.multirate.slow = {};
  simulation::Simulation simulation(assembly, 1);
  double largest = 0;
  for (int hour = 0; hour < 24 * days; ++hour) {
    const double eft = simulation.march_hour().eft;
    if (hour > 24 * days * 9 / 10) largest = std::max(largest, std::abs(eft - assembly.fluid.reference));
  }
  return largest;
}

/// The spacing of 2 x 2 bores at which the bound is just 1 over a day.
double edge() {
  double unstable = 0.2, stable = 0.4;
  while (stable - unstable > 1e-3) {
    const double middle = (unstable + stable) / 2;
    const auto s = close_bores(2, 2, middle);
    (bound(assembly::assemble(s), seconds_per_day) > 1.0001 ? unstable : stable) = middle;
  }
  return stable;
}

/// An update interval of a day forced on 2 x 2 bores: what 120 days leave over what 60 did.
double grown(double spacing) {
  const auto s = close_bores(2, 2, spacing);
  auto assembly = assembly::assemble(s);
  return swing(assembly, seconds_per_day, 120) / swing(assembly, seconds_per_day, 60);
}

}  // namespace

TEST_CASE(
    "Beyond the bound on the update interval the neighbours' sum feeds itself, within it the march stays bounded") {
  const double just = edge();
  // The march is a shade steadier than the bound: its fluid gives way a little to what swings from layer to layer.
  CHECK(grown(0.9 * just) > 100);
  // Bounded by the load, which is noise.
  CHECK(grown(1.02 * just) < 1.5);
}

TEST_CASE("The bound on the update interval stands at one wherever bores are as far apart as usual") {
  for (const double spacing : {3.0, 6.0}) {
    const auto s = close_bores(4, 4, spacing);
    CHECK(bound(assembly::assemble(s), seconds_per_day) == Approx(1).margin(1e-4));
  }
  const auto lone = close_bores(1, 1, 6);
  CHECK(bound(assembly::assemble(lone), seconds_per_day) == 0);
}

TEST_CASE("Close bores have their update interval shortened, and the user is told by what and to what") {
  struct Case {
    double spacing, asked, chosen;  // m, h, h
  };
  for (const Case& c :
       {Case{0.25, 24, 12}, Case{0.16, 24, 3}, Case{0.4, 24, 24}, Case{0.25, 6, 6}, Case{0.8, 480, 240}}) {
    auto s = close_bores(2, 2, c.spacing);
    s.run.refresh = 3600 * c.asked;
    const assembly::Assembly assembly = assembly::assemble(s);
    INFO(c.spacing << " m apart, refresh of " << c.asked << " h");
    CHECK(assembly.multirate.update_interval == 3600 * c.chosen);
    const bool told = std::any_of(assembly.warnings.begin(), assembly.warnings.end(), [](const Warning& warning) {
      return warning.text.find("run.refresh") != std::string::npos;
    });
    CHECK(told == (c.chosen != c.asked));
  }
}

TEST_CASE("A hundred bores half a metre apart in ground that conducts fast stay within their load by both steppers") {
  auto s = close_bores(10, 10, 0.5, 8);
  s.ground.layers.front().solid.heat_capacity = 1.2e6;
  auto uncured = assembly::assemble(s);
  CHECK(uncured.multirate.update_interval < seconds_per_day);
  CHECK(swing(uncured, seconds_per_day, 120) > 1000);
  const auto bounded = [](const std::vector<record::Hour>& hours) {
    return std::all_of(hours.begin(), hours.end(),
                       [](const record::Hour& hour) { return std::abs(hour.eft - 284) < 10; });
  };
  CHECK(bounded(test::march(s, 24 * 60)));
  s.run.stepper = model::Run::Stepper::reference;
  CHECK(bounded(test::march(s, 24 * 20)));
}

TEST_CASE("Bores that answer each other within the hour are refused") {
  const auto s = close_bores(10, 10, 0.151, 6);
  try {
    assembly::assemble(s);
    FAIL("not refused");
  } catch (const InputError& error) {
    CHECK(error.key() == "field");
    CHECK(std::string(error.what()).find("bores 0.151 m apart") != std::string::npos);
  }
}

TEST_CASE(
    "With the shortened update interval close bores are off those looked at every hour by no more than is estimated") {
  for (const double spacing : {0.25, 0.5}) {
    auto s = close_bores(2, 2, spacing);
    s.loads = test::building(4000);
    s.heat_pump = test::scenario(1, 1).heat_pump;
    auto often = s;
    often.run.refresh = seconds_per_hour;
    auto reference = s;
    reference.run.stepper = model::Run::Stepper::reference;
    const auto hours = test::march(s, 2000);
    const double estimate = forecast::estimate_errors(assembly::assemble(s)).refresh;
    CHECK(test::largest_difference(hours, test::march(often, 2000)) < estimate);
    CHECK(estimate < 0.5);
    // Both steppers, one with one clock, where an update interval of a day is kept the other with two.
    CHECK(test::largest_difference(hours, test::march(reference, 2000)) < 4e-4);
  }
}
