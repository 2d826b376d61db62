#pragma once

#include <limits>
#include <sstream>
#include <string>
#include <vector>

#include "engine/base/calendar.hpp"
#include "engine/ground/undisturbed.hpp"

namespace stillground::validation {

/// "2:1:2.8e+06;end:3:2.2e+06" (bottom : conductivity : heat capacity) as the reference tables write a ground log.
inline std::vector<model::Layer> layers_from(const std::string& text) {
  std::vector<model::Layer> layers;
  std::stringstream all(text);
  for (std::string one; std::getline(all, one, ';');) {
    std::stringstream parts(one);
    std::string bottom, k, c;
    std::getline(parts, bottom, ':');
    std::getline(parts, k, ':');
    std::getline(parts, c, ':');
    const double depth = bottom == "end" ? std::numeric_limits<double>::infinity() : std::stod(bottom);
    layers.push_back({depth, "", {std::stod(k), std::stod(c)}});
  }
  return layers;
}

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
