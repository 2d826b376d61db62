#pragma once

#include "engine/materials/fluid_state.hpp"

namespace stillground::materials {

/// Range in which the properties of water follow the temperature [K]; outside they are held at the range's end.
/// Below: stable liquid ends, and with it the formula for the conductivity. Above: IAPWS SR6-08, 383.15 K [from
/// memory].
inline constexpr double water_coldest = 273.15;
inline constexpr double water_warmest = 383.15;

/// Liquid water at 0.1 MPa; `temperature` [K].
/// Source: IAPWS SR6-08(2011), Revised Supplementary Release on Properties of Liquid Water at 0.1 MPa, equations 2
/// (volume), 4 (heat capacity), 7 (viscosity), 8 (conductivity); uncertainty 1e-6 (density), 0.1 %, 1 %, 1.5 % [from
/// memory].
FluidState water_state(double temperature);

}  // namespace stillground::materials
