#include "validation/error_estimate/trial.hpp"

#include <algorithm>
#include <cmath>

#include "engine/forecast/error_estimate.hpp"
#include "engine/simulation/simulation.hpp"

namespace stillground::validation {

std::vector<record::Hour> all_hours(const model::Scenario& scenario) {
  const assembly::Assembly assembly = assembly::assemble(scenario);
  simulation::Simulation simulation(assembly, 1);
  std::vector<record::Hour> hours;
  while (!simulation.finished()) hours.push_back(simulation.march_hour());
  return hours;
}

double largest_difference(const std::vector<record::Hour>& run, const std::vector<record::Hour>& finer) {
  double largest = 0;
  for (std::size_t i = 0; i < run.size(); ++i) {
    if (run[i].flow > 0) largest = std::max(largest, std::abs(run[i].eft - finer[i].eft));
  }
  return largest;
}

model::Scenario finer(const model::Scenario& scenario, const response::Refinement& by) {
  model::Scenario made = response::refined(assembly::assemble(scenario), by);
  made.run.refresh = std::max(1.0, std::round(scenario.run.refresh / seconds_per_hour / 8)) * seconds_per_hour;
  return made;
}

Outcome put_on_trial(Claim& claim, const std::string& at, const model::Scenario& scenario) {
  return put_on_trial(claim, at, scenario, all_hours(finer(scenario, truth)));
}

Outcome put_on_trial(Claim& claim, const std::string& at, const model::Scenario& scenario,
                     const std::vector<record::Hour>& truer) {
  const Outcome outcome{largest_difference(all_hours(scenario), truer),
                        forecast::estimate_errors(assembly::assemble(scenario)).total};
  bounded(claim, at, outcome.estimate, outcome.error);
  return outcome;
}

void bounded(Claim& claim, const std::string& at, double estimate, double error) {
  claim.between(at, estimate / 10, estimate, error);
}

}  // namespace stillground::validation
