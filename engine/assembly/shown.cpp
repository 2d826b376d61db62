#include "engine/assembly/shown.hpp"

#include "engine/base/temperature.hpp"
#include "engine/units/display.hpp"

namespace stillground::assembly {

std::string shown(const model::Scenario& scenario, double kept, std::string_view units, int digits) {
  return units::text(kept, units, digits, scenario.units);
}

std::string shown_temperature(const model::Scenario& scenario, double kelvin) {
  return shown(scenario, kelvin - zero_celsius, "degC", 1);
}

}  // namespace stillground::assembly
