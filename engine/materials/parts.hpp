#pragma once

#include "engine/model/fluid.hpp"

namespace stillground::materials {

/// What a filling is mixed of, at 15 degC.
struct FluidParts {
  double mass = 0;               ///< of the whole [kg]
  double antifreeze_mass = 0;    ///< [kg]; 0 of water
  double antifreeze_volume = 0;  ///< before mixing [m3]; NaN for a salt, which has none of its own
  double water_volume = 0;       ///< before mixing [m3]
};

/// Of `volume` [m3] of the mixture at 15 degC. Parts shrink as they mix: the volumes' sum is more than that. Throws
/// InputError as mass_fraction does.
FluidParts parts_of(const model::Fluid& fluid, double volume);

}  // namespace stillground::materials
