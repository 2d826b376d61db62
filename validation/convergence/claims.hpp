#pragma once

#include "validation/harness/claim.hpp"

namespace stillground::validation {

/// Observed orders of the march in time.
void order_in_time(Check& check);

/// Observed orders of the march in radius and depth.
void order_in_space(Check& check);

/// The operators of radial and axial conduction, applied to fields chosen beforehand.
void manufactured(Check& check);

}  // namespace stillground::validation
