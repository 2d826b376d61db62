#include "engine/march/clocks.hpp"

#include <algorithm>
#include <cmath>

#include "engine/base/calendar.hpp"
#include "engine/march/tableau.hpp"

namespace stillground::march {

namespace {

constexpr double seam_distance = 2.0;  // in units of L
constexpr double buffer_width = 1.4;

/// The first ring whose inner face is at `radius` or beyond.
std::size_t ring_from(const ground::Grid& grid, double radius) {
  const auto face = std::lower_bound(grid.r_faces.begin(), grid.r_faces.end(), radius);
  return static_cast<std::size_t>(face - grid.r_faces.begin());
}

}  // namespace

Clocks choose_clocks(const ground::Grid& grid, double axial_rate) {
  double alpha = 0;
  for (const model::Solid& solid : grid.solid) alpha = std::max(alpha, solid.diffusivity());
  const double day = std::sqrt(alpha * seconds_per_day);
  Clocks clocks;
  clocks.seam = ring_from(grid, grid.r_faces.front() + seam_distance * day);
  if (clocks.seam + 1 >= grid.nr()) return {};
  clocks.buffer_end = ring_from(grid, grid.r_faces[clocks.seam] + buffer_width * day);
  if (clocks.buffer_end + 1 >= grid.nr()) return {};
  const double steps = seconds_per_day * axial_rate / (ars222::real_stability / 2);
  clocks.slow_steps = std::max(1, static_cast<int>(std::ceil(steps)));
  return clocks;
}

}  // namespace stillground::march
