#pragma once

#include <vector>

#include "engine/march/state.hpp"
#include "engine/march/stepper.hpp"
#include "engine/record/frames.hpp"
#include "engine/run/assembly.hpp"

namespace stillground::run {

/// What can be read off a state, without changing it.

/// The state before the first hour: the ground untouched, fluid and grout at rest with it.
march::State initial_state(const march::Problem& problem);

/// Heat stored in ground, grout and fluid of all bores against the initial zero of theta and 0 K of fluid and grout
/// [J].
double stored_heat(const march::Problem& problem, const LoopFluid& fluid, const march::State& state);

/// The snapshot at the state's time; `regime` gives the wall its place between grout and ground.
record::Snapshot snapshot(const march::Problem& problem, const march::FlowRegime& regime, const march::State& state);

/// Mean temperature of the fluid in the loops [K].
double mean_fluid_temperature(const march::Problem& problem, const march::State& state);

/// Coldest bore wall at the state's time [K].
double coldest_wall(const march::Problem& problem, const march::FlowRegime& regime, const march::State& state);

}  // namespace stillground::run
