#include "engine/simulation/hour_summary.hpp"

#include <algorithm>

#include "engine/materials/film.hpp"

namespace stillground::simulation {

void update(Statistics& statistics, const HourSummary& hour, const loop::Demand& demand, const loop::HeatPumps& pumps) {
  statistics.coldest_fluid = std::min({statistics.coldest_fluid, hour.eft, hour.lft});
  statistics.warmest_fluid = std::max({statistics.warmest_fluid, hour.eft, hour.lft});
  if (hour.flows) {
    ++statistics.flowing_hours;
    if (materials::regime(hour.reynolds) == materials::Regime::laminar) ++statistics.laminar_hours;
    statistics.design.look_at({hour.eft, statistics.hour - 1, hour.reynolds});
    statistics.eft_least = std::min(statistics.eft_least, hour.eft);
    statistics.eft_most = std::max(statistics.eft_most, hour.eft);
  }
  const auto beyond = [&](const std::optional<loop::CopCurve>& curve) {
    return hour.eft < curve->least_eft() || hour.eft > curve->most_eft();
  };
  if (demand.heating > 0 && beyond(pumps.heating)) ++statistics.beyond_heating_curve;
  if (demand.hot_water > 0 && beyond(pumps.hot_water)) ++statistics.beyond_hot_water_curve;
  if (demand.cooling > 0 && beyond(pumps.cooling)) ++statistics.beyond_cooling_curve;
}

}  // namespace stillground::simulation
