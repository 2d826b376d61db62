#pragma once

#include "validation/harness/claim.hpp"

namespace stillground::validation {

/// The wave that the seasons send into the ground, even and layered.
void yearly_wave(Check& check);

/// The heat that comes up from below, and its way out through the surface.
void geothermal_heat(Check& check);

}  // namespace stillground::validation
