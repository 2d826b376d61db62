#pragma once

#include <string>
#include <string_view>

#include "engine/model/scenario.hpp"

namespace stillground::assembly {

/// A figure kept in `units` as the scenario's people are shown it, with `digits` after the point: "2.5 m/s", "8.2
/// ft/s". See units::text.
std::string shown(const model::Scenario& scenario, double kept, std::string_view units, int digits);

/// "-1.0 degC", "30.2 degF".
std::string shown_temperature(const model::Scenario& scenario, double kelvin);

}  // namespace stillground::assembly
