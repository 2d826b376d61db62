#pragma once

#include "engine/assembly/assembly.hpp"

namespace stillground::response {

/// Part of the run's hours in which fluid flows, 0.05..1: between them bores and layers give each other nothing through
/// the fluid, so in the long run they level out as if every resistance to it were that much greater.
double operating_fraction(const assembly::Assembly& assembly);

}  // namespace stillground::response
