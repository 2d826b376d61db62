#include "validation/harness/random_building.hpp"

#include <algorithm>
#include <utility>

namespace stillground::validation {

model::Loads random_loads(Draw& draw, const std::vector<double>& shape, double peak, bool building) {
  model::GroundLoads ground;
  model::BuildingLoads both;
  for (const double part : shape) {
    ground.to_ground.values.push_back(peak * part);
    both.heating.values.push_back(std::max(0.0, -peak * part));
    both.cooling.values.push_back(std::max(0.0, 0.8 * peak * part));
  }
  if (draw.chance(0.2)) std::swap(both.cooling, both.cooling_direct);
  if (building) return both;
  return ground;
}

model::HeatPump random_heat_pump(Draw& draw) {
  const double heating = draw.between(2.6, 3.6), cooling = draw.between(5, 8);
  return {{{268.15, heating}, {283.15, heating + 1.2}, {293.15, heating + 1.8}},
          {{273.15, cooling + 1.5}, {288.15, cooling}, {308.15, cooling - 2.2}}};
}

}  // namespace stillground::validation
