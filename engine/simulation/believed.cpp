#include "engine/simulation/believed.hpp"

namespace stillground::simulation {

record::Hour believed_hour(Simulation& simulation, const Plausible& plausible) {
  const long number = simulation.statistics().hour;
  const record::Hour hour = [&] {
    try {
      return simulation.march_hour();
    } catch (const NumericsError& error) {
      plausible.gave_up(error, number);
    }
  }();
  plausible.fluid(hour.eft, hour.lft, number);
  return hour;
}

}  // namespace stillground::simulation
