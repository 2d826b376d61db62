#pragma once

#include "tools/present/canvas.hpp"
#include "tools/present/ground_map.hpp"

namespace stillground::present {

/// Where a map's ground lies on its picture, and what is below and above it.
struct MapFrame {
  Axis x, y;                                        ///< [m]; of an upright cut y.from is the greatest depth
  double left = 0, top = 0, width = 0, height = 0;  ///< [px]
  std::vector<std::string> subtitle;                ///< broken into lines
  Plot plot() const { return {x, y, left, top, width, height}; }
  Point at(const Point& p) const { return {plot().x(p.x), plot().y(p.y)}; }
};

MapFrame map_frame(const GroundMap& map);

inline constexpr double map_width = 900;  ///< of the whole picture [px]
inline constexpr double map_text = 17;    ///< size of its words [px]
inline constexpr double map_margin = 20;  ///< [px]

}  // namespace stillground::present
