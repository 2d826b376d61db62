#pragma once

#include <cstddef>

#include "engine/march/problem.hpp"

namespace stillground::march::fused {

/// A group and the memory that one hour of it reads and writes.
struct GroupView {
  const Group& group;
  double* y = nullptr;           ///< its block of the state
  double* amplitudes = nullptr;  ///< its block of State::amplitudes; with two rates only
  double* scratch = nullptr;     ///< rows of the ground's own, from one stage to the next
};

/// Layers [from, end), whole eights.
struct LayerRange {
  std::size_t from = 0, end = 0;
};

}  // namespace stillground::march::fused
