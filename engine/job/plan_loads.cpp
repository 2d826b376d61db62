#include <algorithm>
#include <limits>
#include <variant>

#include "engine/job/plan_parts.hpp"

namespace stillground::job {

namespace {

/// Adds one hour's load [W] of a run of so many years.
void add(double load, bool first_year, int years, LoadSummary& duty) {
  const double energy = load * seconds_per_hour;
  duty.year += energy / years;
  if (first_year) duty.first_year += energy;
  duty.peak = std::max(duty.peak, load);
}

}  // namespace

void describe_loads(const assembly::Assembly& assembly, Plan& plan) {
  const bool building = std::holds_alternative<model::BuildingLoads>(assembly.scenario.loads);
  const int years = assembly.scenario.run.years;
  double ground = 0;
  for (long hour = 0; hour < assembly.hours(); ++hour) {
    const loop::Demand demand = assembly.loads.hour(hour);
    const bool first = hour < hours_per_year;
    add(demand.heating + demand.hot_water, first, years, plan.heating);
    add(demand.hot_water, first, years, plan.hot_water);
    add(demand.cooling + demand.cooling_direct, first, years, plan.cooling);
    ground += demand.to_ground * seconds_per_hour / years;
  }
  plan.heat_to_ground = building ? std::numeric_limits<double>::quiet_NaN() : ground;
  plan.ground_heats = assembly::ground_heats(assembly);
}

}  // namespace stillground::job
