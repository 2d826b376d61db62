#pragma once

#include "engine/materials/fluid_state.hpp"
#include "engine/model/bore.hpp"

namespace stillground::bore {

/// Loss at the toe's turn, in inside diameters of straight pipe: a close return bend. Source: general tables of
/// equivalent lengths, of which several public copies were read; a maker's value goes before.
inline constexpr double return_bend = 50;

/// Volume flow through a bore at which no way of its loop is slower than `velocity` [m/s, >= 0]: its widest sets it
/// [m3/s].
double flow_for(const model::Bore& bore, double velocity);

/// Pressure that a bore's loop of active length `length` [m] takes at `volume_flow` [m3/s, > 0] through the bore: in
/// each way f (L/d) rho v^2/2, and at each turn in the toe as much as return_bend diameters of the way down. An annulus
/// counts by its hydraulic diameter, which in laminar flow is too little by up to a third. [Pa] Sources: Darcy and
/// Weisbach; friction factor: materials::friction_factor.
double head(const model::Bore& bore, double length, double volume_flow, const materials::FluidState& state);

}  // namespace stillground::bore
