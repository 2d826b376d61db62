#pragma once

#include "engine/march/multirate.hpp"
#include "engine/march/problem.hpp"
#include "engine/march/state.hpp"

namespace stillground::march {

/// A state of the right sizes, all zero.
State blank_state(const Problem& problem, const Multirate& multirate);

}  // namespace stillground::march
