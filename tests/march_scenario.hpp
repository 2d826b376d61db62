#pragma once

#include <cmath>
#include <limits>
#include <vector>

#include "engine/model/scenario.hpp"
#include "engine/simulation/simulation.hpp"

namespace stillground::test {

/// Repeatable noise in [0, 1): a linear congruential generator (Knuth's MMIX constants, from memory; any would do).
class Noise {
 public:
  double operator()() {
    state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
    return static_cast<double>(state_ >> 11) / 9007199254740992.0;
  }

 private:
  unsigned long long state_ = 2463534242ULL;
};

/// A year of a building that heats in winter and cools in summer, hour by hour at random, with idle hours. Invented.
inline model::BuildingLoads building(double peak) {
  Noise noise;
  model::BuildingLoads loads;
  for (int hour = 0; hour < hours_per_year; ++hour) {
    const double season = std::cos(2 * std::acos(-1.0) * hour / hours_per_year);
    const double draw = noise();
    const bool idle = noise() < 0.2;
    loads.heating.values.push_back(idle || season < -0.3 ? 0 : peak * draw * (0.4 + 0.6 * std::max(0.0, season)));
    loads.cooling.values.push_back(idle || season > -0.3 ? 0 : 0.7 * peak * draw * -season);
  }
  return loads;
}

/// An invented site: two layers, a single U in 90 m bores, water with propylene glycol, a heat pump.
inline model::Scenario scenario(int rows, int columns, int years = 1) {
  model::Scenario s;
  s.title = "invented";
  s.ground.layers = {{9, "clay", {1.3, 2.6e6}}, {std::numeric_limits<double>::infinity(), "limestone", {2.5, 2.2e6}}};
  s.ground.undisturbed = model::SeasonalSurface{283.5, 9, 25 * 86400.0, 0.06, 0, 0};
  s.bore.top = 1.8;
  s.bore.depth = 90;
  s.bore.diameter = 0.15;
  s.bore.loop = model::SingleU{0.08};
  s.bore.pipe = {"", 0.0422, 0.00383, 0.42, 1.9e6, 0};
  s.bore.grout = {"", {1.6, 3.0e6}};
  s.layout = model::Grid{rows, columns, 6};
  s.fluid = {model::Antifreeze::propylene_glycol, 0.22, model::Fluid::Basis::mass};
  s.flow = {0.35e-3, model::Flow::Amount::per_bore, model::Flow::Runs::with_load};
  s.loads = building(4500.0 * rows * columns);
  s.heat_pump =
      model::HeatPump{{{268.15, 3.0}, {273.15, 3.4}, {283.15, 4.4}}, {{283.15, 7.0}, {298.15, 5.0}, {308.15, 3.9}}};
  s.run.start = {2027, 7, 1};
  s.run.years = years;
  s.file = "invented.yaml";
  return s;
}

/// The hours of a march.
inline std::vector<record::Hour> march(const model::Scenario& s, long hours, int threads = 1) {
  const assembly::Assembly assembly = assembly::assemble(s);
  simulation::Simulation simulation(assembly, threads);
  std::vector<record::Hour> result;
  for (long hour = 0; hour < hours; ++hour) result.push_back(simulation.march_hour());
  return result;
}

/// Largest difference of the EFT in hours with flow [K].
inline double largest_difference(const std::vector<record::Hour>& a, const std::vector<record::Hour>& b) {
  double largest = a.size() == b.size() ? 0 : std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < std::min(a.size(), b.size()); ++i) {
    if (a[i].flow > 0) largest = std::max(largest, std::abs(a[i].eft - b[i].eft));
  }
  return largest;
}

}  // namespace stillground::test
