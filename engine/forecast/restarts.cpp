#include "engine/forecast/restarts.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/response/single_bore.hpp"
#include "engine/response/superposition.hpp"
#include "engine/simulation/simulation.hpp"

namespace stillground::forecast {

namespace {

constexpr long window = 48;   // hours marched: the day before the restart, and its day
constexpr double fading = 6;  // hours in which fluid and grout that stand forget what the last load left
constexpr long no_restart = -1;

/// In each quarter of the run-year the hour of a restart after the largest load, faded over the hours of rest.
std::array<long, 4> hardest_restarts(const assembly::Assembly& assembly) {
  std::array<long, 4> hours{no_restart, no_restart, no_restart, no_restart};
  std::array<double, 4> hardest{};
  double left = 0;
  bool flowed = false;
  for (long hour = 0; hour < assembly.hours(); ++hour) {
    const loop::Demand demand = assembly.loads.hour(hour);
    const bool flows = demand.any();
    const auto quarter = static_cast<std::size_t>(hour % hours_per_year * 4 / hours_per_year);
    if (flows && !flowed && left > hardest[quarter]) {
      hardest[quarter] = left;
      hours[quarter] = hour;
    }
    left = flows ? demand.size() : left * std::exp(-1 / fading);
    flowed = flows;
  }
  return hours;
}

std::vector<record::Hour> march(const assembly::Assembly& lone) {
  simulation::Simulation simulation(lone, 1);
  std::vector<record::Hour> hours;
  for (long hour = 0; hour < window; ++hour) hours.push_back(simulation.march_hour());
  return hours;
}

/// Largest part of the difference of two marches that the response does not give. `rest`: the response's value over a
/// plain difference of marches.
double residual(const std::vector<record::Hour>& run, const std::vector<record::Hour>& finer,
                const response::StepResponse& response, double rest) {
  std::vector<double> heat_before{0};
  for (const auto& hour : run) heat_before.push_back(heat_before.back() + hour.heat_to_ground);
  double largest = 0;
  for (std::size_t i = 0; i < run.size(); ++i) {
    if (run[i].flow <= 0) continue;
    const double explained = response::superposed(response, heat_before, static_cast<long>(i));
    largest = std::max(largest, std::abs(rest * (run[i].eft - finer[i].eft) - explained));
  }
  return largest;
}

}  // namespace

RestartResidual restart_residual(const assembly::Assembly& assembly, const ErrorResponses& responses) {
  RestartResidual left;
  if (assembly.scenario.flow.runs == model::Flow::Runs::always) return left;
  for (const long hour : hardest_restarts(assembly)) {
    if (hour == no_restart) continue;
    const long day = std::max(0L, hour / 24 - 1);
    const auto under = [&](const response::Refinement& by) {
      const model::Scenario bore = response::lone_bore_on_day(assembly, by, day, window);
      return march(assembly::assemble(bore, assembly));
    };
    const auto run = under({});
    left.step = std::max(left.step, residual(run, under({1, 1, 4}), responses.step, rest_of_step));
    left.layers = std::max(left.layers, residual(run, under({1, 2, 1}), responses.layers, rest_of_layers));
  }
  return left;
}

}  // namespace stillground::forecast
