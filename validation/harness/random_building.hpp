#pragma once

#include <vector>

#include "engine/model/loads.hpp"
#include "validation/harness/draw.hpp"

namespace stillground::validation {

/// Loads of which every hour is `peak` [W] times its part of `shape`, -1..1, heat to the ground counted positive: the
/// ground's own, or a building's, now and then cooled without a heat pump. Draws once.
model::Loads random_loads(Draw& draw, const std::vector<double>& shape, double peak, bool building);

/// COP curves as of usual heat pumps.
model::HeatPump random_heat_pump(Draw& draw);

}  // namespace stillground::validation
