#pragma once

#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/march/rates.hpp"
#include "engine/march/state.hpp"
#include "engine/march/stepper.hpp"
#include "engine/record/frames.hpp"

namespace stillground::simulation {

/// What can be read off a state, without changing it.

/// The state before the first hour: the ground untouched, fluid and grout at rest with it.
march::State initial_state(const march::Problem& problem, const march::Multirate& multirate = {});

/// Fills the group's bores with grout and fluid at rest with the ground of the state's time.
void fill_bore(const march::Problem& problem, const march::Multirate& multirate, march::State& state,
               std::size_t group);

/// Heat stored in ground, grout and fluid of all bores against the initial zero of theta and 0 K of fluid and grout
/// [J].
double stored_heat(const march::Problem& problem, const assembly::LoopFluid& fluid, const march::State& state);

/// The snapshot at the state's time. `forcing`: the hour that led to the state, whose flow the fluid still has; a group
/// without a regime in it has the `standing` one. `drilled` [group]: the others' bores are gaps.
record::Snapshot snapshot(const march::Problem& problem, const march::Multirate& multirate,
                          const march::FlowRegime& standing, const march::Forcing& forcing, const march::State& state,
                          const std::vector<bool>& drilled);

/// Where bore walls are coldest and warmest. A wall that is no number is both.
struct WallExtremes {
  struct At {
    double temperature = 0;  ///< [K]
    std::size_t group = 0, layer = 0;
  };
  At coldest, warmest;
};

/// Those of the state's time; `regime` and `drilled` as for snapshot(), at least one group drilled.
WallExtremes wall_extremes(const march::Problem& problem, const march::Multirate& multirate,
                           const march::FlowRegime& regime, const march::State& state,
                           const std::vector<bool>& drilled);

/// Coldest bore wall at the state's time under the hour's forcing [K].
double coldest_wall(const march::Problem& problem, const march::Multirate& multirate, const march::Forcing& forcing,
                    const march::State& state);

}  // namespace stillground::simulation
