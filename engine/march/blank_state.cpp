#include "engine/march/blank_state.hpp"

#include "engine/march/ambient.hpp"

namespace stillground::march {

State blank_state(const Problem& problem) {
  State state;
  const std::size_t groups = problem.groups.size(), row = problem.row();
  state.y.assign(problem.size(), 0.0);
  no_neighbours_yet(problem, state);
  if (problem.clocks.two()) {
    state.seam_heat.assign(groups * row, 0.0);
    state.under_buffer.assign(groups * (problem.clocks.buffer_end - problem.clocks.seam) * row, 0.0);
  }
  return state;
}

}  // namespace stillground::march
