#pragma once

#include <cstddef>

#include "engine/march/problem.hpp"

namespace stillground::march::fused {

/// Where a group's ground is marched: the memory that one hour of it reads and writes.
struct Site {
  const Group& group;
  double* y = nullptr;           ///< its block of the state
  double* amplitudes = nullptr;  ///< its rows of State::amplitudes; with two clocks only
  double* scratch = nullptr;     ///< rows of the ground's own, from one stage to the next
};

/// Layers [from, past), whole eights.
struct Layers {
  std::size_t from = 0, past = 0;
};

}  // namespace stillground::march::fused
