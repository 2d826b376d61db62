#pragma once

#include "engine/bore/loop_type.hpp"

namespace stillground::bore {

// What loop types have in common: round pipes in a bore, the rest of which is grout.

/// pi d^2/4 [m2].
double circle_area(double diameter);

/// Mean velocity of `mass_flow` [kg/s] between the diameters `inner` and `outer` [m/s].
double mean_velocity(double mass_flow, double density, double inner, double outer);

/// Flow in one round pipe; its film is films[0].
PipeFlow flow_in_pipe(const model::Pipe& pipe, double mass_flow, const materials::FluidState& state);

/// Film and wall of one pipe per length [K m/W]; `film_resistance` from materials::film_resistance.
double pipe_resistance(const model::Pipe& pipe, double film_resistance);

/// Grout and pipe walls round `pipes` of the bore's pipe, rho c A [J/(m K)].
double grout_capacity(const model::Bore& bore, int pipes);

/// Of a bore with `pipes` of its own pipe, all filled with fluid.
Amounts pipe_amounts(const model::Bore& bore, int pipes);

}  // namespace stillground::bore
