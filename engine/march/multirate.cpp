#include "engine/march/multirate.hpp"

#include <algorithm>
#include <cmath>

#include "engine/march/radial_modes.hpp"

namespace stillground::march {

namespace {

constexpr double slow_within_a_macro_step = 4.0;  // decay rate times the macro-step

}  // namespace

SlowModes choose_slow_modes(const ground::Grid& grid, double axial_rate) {
  double alpha = 0;
  for (const model::Solid& solid : grid.solid) alpha = std::max(alpha, solid.diffusivity());
  const RadialModes modes(grid);
  // Slow: alpha lambda_m H <= 4, H the macro-step, alpha of the quickest ground.
  const auto quick = std::upper_bound(modes.rates().begin(), modes.rates().end(),
                                      slow_within_a_macro_step / (alpha * Multirate::macro_step));
  const auto slow = static_cast<std::size_t>(quick - modes.rates().begin());
  if (slow <= Multirate::reduced_modes) return {};
  return {slow, std::max(1, static_cast<int>(std::ceil(Multirate::macro_step / 2 * axial_rate)))};
}

}  // namespace stillground::march
