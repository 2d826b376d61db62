#include "engine/simulation/duties.hpp"

namespace stillground::simulation {

namespace {

/// Q / COP [W]; 0 without the duty.
double electricity(double heat, const std::optional<loop::CopCurve>& curve, double eft) {
  return heat == 0 ? 0 : heat / curve->at(eft);
}

}  // namespace

void enter_duties(record::Hour& hour, const loop::Demand& demand, const loop::HeatPumps& pumps) {
  hour.heating = demand.heating + demand.hot_water;
  hour.cooling = demand.cooling + demand.cooling_direct;
  hour.hot_water = demand.hot_water;
  hour.cooling_direct = demand.cooling_direct;
  const double heating = electricity(demand.heating, pumps.heating, hour.eft);
  const double hot_water = electricity(demand.hot_water, pumps.hot_water, hour.eft);
  const double cooling = electricity(demand.cooling, pumps.cooling, hour.eft);
  const double all = heating + hot_water + cooling;
  if (all == 0) return;
  hour.power_hot_water = hour.power * (hot_water / all);
  hour.power_cooling = hour.power * (cooling / all);
}

}  // namespace stillground::simulation
