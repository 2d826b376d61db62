#pragma once

#include <span>

#include "engine/march/multirate.hpp"
#include "engine/march/problem.hpp"
#include "engine/march/state.hpp"
#include "engine/march/workers.hpp"

namespace stillground::march {

/// What a group's bore wall would have without the group's own heat: T0(z, t) plus what the neighbours have done.
/// The neighbours' sum is slow (a neighbour 5 m off is felt after weeks): formed anew every update interval (what comes
/// from farther shells less often: field::Coupling), in between extrapolated linearly from the last two values,
///   wall = T0 + N + (t - t_N)/R (N - N_before),   R the update interval, t_N the last update.

/// Sizes what the state keeps of the neighbours: none of them has done anything yet.
void no_neighbours_yet(const Problem& problem, State& state);

/// Forms those shells' sums that are due from the state and carries the others on to its time. Only in layers with a
/// bore of the field's in them: no other has a wall. The same bits at any number of threads.
void update_neighbours(const Problem& problem, const Multirate& multirate, State& state, Workers& workers);

/// Whether the sum is due at the state's time.
bool update_due(const Problem& problem, const Multirate& multirate, const State& state);

/// T0 plus neighbours at `time` for group g, [z] of row() entries (padding zero). `undisturbed`: T0 at that time, [z].
void ambient(const Problem& problem, const Multirate& multirate, const State& state, double time, std::size_t g,
             std::span<const double> undisturbed, std::span<double> result);

}  // namespace stillground::march
