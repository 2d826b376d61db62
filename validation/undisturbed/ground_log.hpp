#pragma once

#include <vector>

#include "engine/base/calendar.hpp"
#include "engine/ground/undisturbed.hpp"
#include "validation/harness/ground_log.hpp"

namespace stillground::validation {

/// A column of equal cells [m] down to `depth` [m]; every boundary of the log must be a face of it.
inline ground::Grid even_column(const std::vector<model::Layer>& layers, double depth, double height) {
  ground::Grid grid;
  grid.z_faces.push_back(0);
  for (std::size_t k = 0; grid.z_faces.back() < depth - height / 2; ++k) {
    grid.z.push_back((static_cast<double>(k) + 0.5) * height);
    grid.z_faces.push_back(static_cast<double>(k + 1) * height);
    std::size_t layer = 0;
    while (grid.z.back() > layers[layer].bottom) ++layer;
    grid.solid.push_back(layers[layer].solid);
  }
  return grid;
}

/// The undisturbed column at one time, cell by cell [K].
inline std::vector<double> column_at(const ground::Undisturbed& undisturbed, const ground::Grid& grid, double time) {
  std::vector<double> temperature(grid.nz());
  undisturbed.at(time, temperature);
  return temperature;
}

}  // namespace stillground::validation
