#include "engine/march/blank_state.hpp"

#include "engine/march/ambient.hpp"

namespace stillground::march {

State blank_state(const Problem& problem) {
  State state;
  state.y.assign(problem.size(), 0.0);
  no_neighbours_yet(problem, state);
  if (problem.clocks.two()) {
    state.amplitudes.assign(problem.groups.size() * problem.clocks.amplitudes(problem.nr()) * problem.row(), 0.0);
  }
  return state;
}

}  // namespace stillground::march
