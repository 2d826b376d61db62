#pragma once

#include "validation/harness/claim.hpp"

namespace stillground::validation {

/// Resistances of the modes of each loop type.
void judge_resistances(Check& check);

/// R_b* and the outlet of each loop type, marched to its steady state; the closed solution that the report uses.
void judge_outlets(Check& check);

/// Every stream's temperature on its way down and up.
void judge_profiles(Check& check);

/// What must hold whatever the figures: plenty of flow, little flow, the flow turned round.
void judge_limits(Check& check);

}  // namespace stillground::validation
