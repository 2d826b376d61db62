#include "engine/march/blank_state.hpp"

#include "engine/march/ambient.hpp"
#include "engine/march/state_layout.hpp"

namespace stillground::march {

State blank_state(const Problem& problem, const Multirate& multirate) {
  const StateLayout layout(problem, multirate);
  State state;
  state.y.assign(layout.size(), 0.0);
  no_neighbours_yet(problem, state);
  if (multirate.two_rates()) state.amplitudes.assign(layout.groups * layout.amplitude_block(), 0.0);
  return state;
}

}  // namespace stillground::march
