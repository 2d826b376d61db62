#include "engine/assembly/ground_heat.hpp"

#include <cmath>

#include "engine/assembly/assembly.hpp"
#include "engine/assembly/work_periods.hpp"
#include "engine/loop/flow_rule.hpp"

namespace stillground::assembly {

namespace {

/// The EFT that one side's limit allows [K]; the undisturbed ground's temperature where there is none.
double allowed_eft(const Assembly& assembly, model::Limit::Side side) {
  for (const model::Limit& limit : assembly.scenario.limits) {
    if (limit.quantity == model::Limit::Quantity::eft && limit.side == side) return limit.value;
  }
  return assembly.fluid.reference;
}

/// An hour with a load.
struct Hour {
  long number = 0;
  const WorkPeriod& period;
  double heat_rate = 0;  ///< m c of the whole field in this hour [W/K]
};

/// Adds an hour's heat of the whole field, positive where it goes this way: `peak` [W] by the COP that peaks are judged
/// by, `mean` [W] by that of the year.
void add(const Hour& hour, double peak, double mean, double run_metres, GroundHeat& heat) {
  if (mean > 0) heat.year += mean * seconds_per_hour / run_metres;
  const double per_metre = peak / hour.period.length;
  // Equal peaks differ by round-off: the first of them counts.
  if (!(per_metre > heat.peak * (1 + 1e-9))) return;
  heat.peak = per_metre;
  heat.hour = hour.number;
  heat.difference = hour.heat_rate > 0 ? peak / hour.heat_rate : 0;
}

/// Mean of the metres at work over the run, times its years [m a].
double metre_years(const std::vector<WorkPeriod>& periods) {
  double sum = 0;
  for (const WorkPeriod& period : periods) sum += period.length * period.hours() / hours_per_year;
  return sum;
}

}  // namespace

GroundHeats ground_heats(const Assembly& assembly) {
  const loop::HeatPumps& pumps = assembly.problem.pumps;
  const double largest_load = assembly.loads.peak();
  const double volumetric = assembly.fluid.density * assembly.fluid.heat_capacity;
  GroundHeats heats;
  heats.taken.eft = allowed_eft(assembly, model::Limit::Side::least);
  heats.given.eft = allowed_eft(assembly, model::Limit::Side::most);
  const std::vector<WorkPeriod> periods = work_periods(assembly);
  const double run_metres = metre_years(periods);
  for (const WorkPeriod& period : periods) {
    if (period.bores == 0) continue;
    for (long h = period.first; h < period.end; ++h) {
      const loop::Demand demand = assembly.loads.hour(h);
      if (!demand.any()) continue;
      const double part = loop::flow_part(assembly.scenario.flow, demand.size() / largest_load);
      const Hour hour{h, period, part * period.flow * volumetric};
      const double mean = loop::exchange(demand, pumps, assembly.fluid.reference).to_ground;
      add(hour, -loop::exchange(demand, pumps, heats.taken.eft).to_ground, -mean, run_metres, heats.taken);
      add(hour, loop::exchange(demand, pumps, heats.given.eft).to_ground, mean, run_metres, heats.given);
    }
  }
  return heats;
}

const char* likely_slip(double peak, double usual) {
  return peak > 3 * usual ? "are the loads in W under a head that says kW, or bores left out?" : "";
}

}  // namespace stillground::assembly
