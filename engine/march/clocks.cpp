#include "engine/march/clocks.hpp"

#include <algorithm>
#include <cmath>

#include "engine/base/calendar.hpp"
#include "engine/march/radial_modes.hpp"

namespace stillground::march {

namespace {

constexpr double slow_within_a_turn = 4.0;  // decay rate times a turn

}  // namespace

Clocks choose_clocks(const ground::Grid& grid, double axial_rate) {
  double alpha = 0;
  for (const model::Solid& solid : grid.solid) alpha = std::max(alpha, solid.diffusivity());
  const RadialModes modes(grid);
  const auto quick =
      std::upper_bound(modes.rates().begin(), modes.rates().end(), slow_within_a_turn / (alpha * Clocks::slow_step));
  const auto slow = static_cast<std::size_t>(quick - modes.rates().begin());
  if (slow <= Clocks::stand_ins) return {};
  return {slow, std::max(1, static_cast<int>(std::ceil(Clocks::slow_step / 2 * axial_rate)))};
}

}  // namespace stillground::march
