#pragma once

#include <string>
#include <vector>

#include "engine/base/unit_system.hpp"
#include "tools/present/figure.hpp"

namespace stillground::present {

/// A bore on a map: seen from above at `at`, or upright at `at.x` from `at.y` down to `toe`.
struct MapBore {
  Point at;             ///< [m]
  double toe = 0;       ///< [m]
  bool beside = false;  ///< stands somewhat beside an upright cut: dashed
};

/// A map of the ground's temperature, or of its change, on an upright grid.
struct GroundMap {
  std::string id;
  std::string title;
  std::vector<std::string> subtitle;
  std::string description;
  std::vector<std::string> footnotes = {};
  bool upright = false;        ///< y is the depth, drawn downwards, with a scale of its own
  std::vector<double> x, y;    ///< of the nodes, rising [m]
  std::vector<double> levels;  ///< rising, in the values' units; at least one
  std::string quantity;        ///< "temperature [°C]", above the legend
  std::vector<MapBore> bores;
  std::vector<Point> outline = {};    ///< of the plot [m]
  std::string outline_text = {};      ///< what it is
  UnitSystem units = UnitSystem::si;  ///< of the distances
};

/// Round levels, about `wanted` of them, among values: their outermost hundredth at either end, where the bores' own
/// steep fields lie, does not count. One level where all values are alike.
std::vector<double> round_levels(std::vector<double> values, int wanted = 9);

/// "12.5": as many digits as the step between these levels has.
std::string level_text(double level, const std::vector<double>& levels);

/// The values of one instant, [y][x], as SVG: bands, the lines between them and their names.
std::string map_layer(const GroundMap& map, const std::vector<double>& values);

/// The picture round such layers: bores, outline, axes, scale, legend. 900 units wide.
std::string svg(const GroundMap& map, const std::string& layers);

}  // namespace stillground::present
