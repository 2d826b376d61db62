#pragma once

#include "engine/model/scenario.hpp"
#include "validation/harness/claim.hpp"

namespace stillground::validation {

/// A loop as it is commonly built: 1-1/4 in DR-11 in a 6 in bore of 400 ft, 6 gpm of water with a fifth of propylene
/// glycol for 2 tons (7 kW), ground of 2.3 W/(m K) at 12 degC. All of it invented, none of it a real site.
model::Scenario common_loop();

/// Two years of a house on that loop: temperatures entering and leaving, heat per metre.
void judge_temperatures(Check& check);

/// R_b of common makes.
void judge_resistances(Check& check);

/// Reynolds numbers and head lost at common flow.
void judge_flow(Check& check);

/// Undisturbed ground: yearly wave and gradient.
void judge_ground(Check& check);

/// When a bore looks like a line, and when it has come to rest.
void judge_time_scales(Check& check);

}  // namespace stillground::validation
