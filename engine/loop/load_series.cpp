#include "engine/loop/load_series.hpp"

#include <algorithm>
#include <variant>

#include "engine/base/calendar.hpp"

namespace stillground::loop {

namespace {

/// The series' value `h` hours after the first hour of a year; 0 for an absent series.
double value(const model::HourlySeries& series, long h) {
  if (series.values.empty()) return 0;
  const long n = static_cast<long>(series.values.size());
  return series.values[static_cast<std::size_t>((((h - series.first_hour) % n) + n) % n)];
}

}  // namespace

LoadSeries::LoadSeries(const model::Loads& loads, int first_hour_of_year)
    : loads_(loads), first_hour_of_year_(first_hour_of_year) {}

Demand LoadSeries::hour(long h) const {
  const long in_file = first_hour_of_year_ + h;
  if (const auto* building = std::get_if<model::BuildingLoads>(&loads_)) {
    const double cooling = value(building->cooling, in_file);
    return {value(building->heating, in_file), building->cooling_direct ? 0 : cooling,
            building->cooling_direct ? cooling : 0, 0};
  }
  if (const auto* ground = std::get_if<model::GroundLoads>(&loads_))
    return {0, 0, 0, value(ground->to_ground, in_file)};
  return {0, 0, 0, std::get<model::ConstantGroundLoad>(loads_).to_ground};
}

double LoadSeries::cooling_peak() const {
  const auto* building = std::get_if<model::BuildingLoads>(&loads_);
  if (!building || building->cooling_direct || building->cooling.values.empty()) return 0;
  return *std::max_element(building->cooling.values.begin(), building->cooling.values.end());
}

}  // namespace stillground::loop
