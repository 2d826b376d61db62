#include "engine/loop/load_series.hpp"

#include <algorithm>
#include <variant>

#include "engine/base/calendar.hpp"

namespace stillground::loop {

LoadSeries::LoadSeries(const model::Loads& loads, int first_hour_of_year)
    : loads_(loads), first_hour_of_year_(first_hour_of_year) {}

Demand LoadSeries::hour(long h) const {
  const long in_file = first_hour_of_year_ + h;
  Demand demand;
  if (const auto* building = std::get_if<model::BuildingLoads>(&loads_)) {
    demand.heating = building->heating.at(in_file);
    demand.hot_water = building->hot_water.at(in_file);
    demand.cooling = building->cooling.at(in_file);
    demand.cooling_direct = building->cooling_direct.at(in_file);
  } else if (const auto* ground = std::get_if<model::GroundLoads>(&loads_)) {
    demand.to_ground = ground->to_ground.at(in_file);
  } else {
    demand.to_ground = std::get<model::ConstantGroundLoad>(loads_).to_ground;
  }
  return demand;
}

double LoadSeries::peak() const {
  std::size_t hours = 1;
  if (const auto* building = std::get_if<model::BuildingLoads>(&loads_)) {
    for (const auto* series :
         {&building->heating, &building->hot_water, &building->cooling, &building->cooling_direct}) {
      hours = std::max(hours, series->values.size());
    }
  } else if (const auto* ground = std::get_if<model::GroundLoads>(&loads_)) {
    hours = ground->to_ground.values.size();
  }
  double most = 0;
  for (std::size_t h = 0; h < hours; ++h) most = std::max(most, hour(static_cast<long>(h)).size());
  return most;
}

double LoadSeries::cooling_peak() const {
  const auto* building = std::get_if<model::BuildingLoads>(&loads_);
  if (!building || building->cooling.values.empty()) return 0;
  return *std::max_element(building->cooling.values.begin(), building->cooling.values.end());
}

}  // namespace stillground::loop
