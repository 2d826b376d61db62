#include "engine/job/marched.hpp"

#include <utility>

#include "engine/forecast/merging.hpp"
#include "engine/job/header.hpp"
#include "engine/job/warnings.hpp"
#include "engine/simulation/believed.hpp"
#include "engine/transit/minute_extremes.hpp"

namespace stillground::job {

namespace {

std::vector<record::Hour> all_hours(const assembly::Assembly& assembly, simulation::Simulation& simulation,
                                    const MarchedOptions& options) {
  const simulation::Plausible plausible(assembly);
  std::vector<record::Hour> hours;
  hours.reserve(static_cast<std::size_t>(assembly.hours()));
  while (!simulation.finished()) {
    hours.push_back(simulation::believed_hour(simulation, plausible));
    const long hour = simulation.statistics().hour;
    if (hour % 24 != 0) continue;
    plausible.walls(simulation.walls(), hour);
    if (options.progress) options.progress(static_cast<double>(hour) / static_cast<double>(assembly.hours()));
    if (options.stop && options.stop->load()) throw Interrupted("interrupted; nothing is kept of this search");
    if (hour % hours_per_year != 0) continue;
    const int year = static_cast<int>(hour / hours_per_year);
    plausible.balance(simulation.year_balance(), simulation.statistics().turned_over, year);
    if (!simulation.finished()) simulation.start_year();
  }
  return hours;
}

}  // namespace

Marched marched(model::Scenario scenario, const MarchedOptions& options) {
  scenario.run.method = model::Run::Method::march;
  scenario.fields = model::RecordFields::none;
  const assembly::Assembly assembly = forecast::assemble(std::move(scenario));
  std::vector<Warning> warnings = warnings_before(assembly);
  simulation::Simulation simulation(assembly, options.threads);
  Marched result;
  result.hours = all_hours(assembly, simulation, options);
  const std::vector<Warning> after = warnings_after(assembly, simulation.statistics());
  warnings.insert(warnings.end(), after.begin(), after.end());
  result.header = make_header(assembly, warnings);
  if (options.minutes) result.minutes = transit::minute_extremes(assembly, result.hours);
  return result;
}

}  // namespace stillground::job
