#include "engine/run/seen_hour.hpp"

#include <algorithm>

#include "engine/materials/film.hpp"

namespace stillground::run {

void see(Tally& tally, const SeenHour& hour, const loop::Demand& demand, const loop::HeatPumps& pumps) {
  tally.coldest_fluid = std::min({tally.coldest_fluid, hour.eft, hour.lft});
  tally.warmest_fluid = std::max({tally.warmest_fluid, hour.eft, hour.lft});
  if (hour.flows) {
    ++tally.flowing_hours;
    if (materials::regime(hour.reynolds) == materials::Regime::laminar) ++tally.laminar_hours;
    tally.design.look_at({hour.eft, tally.hour - 1, hour.reynolds});
    tally.eft_least = std::min(tally.eft_least, hour.eft);
    tally.eft_most = std::max(tally.eft_most, hour.eft);
  }
  const auto beyond = [&](const std::optional<loop::CopCurve>& curve) {
    return hour.eft < curve->least_eft() || hour.eft > curve->most_eft();
  };
  if (demand.heating > 0 && beyond(pumps.heating)) ++tally.beyond_heating_curve;
  if (demand.hot_water > 0 && beyond(pumps.hot_water)) ++tally.beyond_hot_water_curve;
  if (demand.cooling > 0 && beyond(pumps.cooling)) ++tally.beyond_cooling_curve;
}

}  // namespace stillground::run
