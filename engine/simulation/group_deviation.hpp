#pragma once

#include "engine/assembly/assembly.hpp"
#include "engine/march/state.hpp"
#include "engine/march/workers.hpp"

namespace stillground::simulation {

/// How far merged groups stand from what they stand for, now: the largest difference, over all bores, between what a
/// bore's neighbours have done to it, read off their groups' ground at its own distances, and what its group is given,
/// either as a mean over the bore's length [K]. A bore's wall, and the ground about it, differ from those of its group
/// by less: its own heat gives way. The same bits at any number of threads.
double group_deviation(const assembly::Assembly& assembly, const march::State& state, march::Workers& workers);

}  // namespace stillground::simulation
