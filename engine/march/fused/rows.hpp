#pragma once

#include <cstddef>
#include <vector>

#include "engine/march/problem.hpp"
#include "engine/march/state.hpp"
#include "engine/march/state_layout.hpp"

namespace stillground::march::fused {

/// For each `lanes` layers of a row how many times as many from there on are of one ground, 255 at most; 0: not even
/// these. The padding, where all is zero, goes with any.
std::vector<unsigned char> uniform_runs(const Problem& problem, std::size_t lanes);

/// All values times `by`.
Vector scaled(const Vector& values, double by);

}  // namespace stillground::march::fused
