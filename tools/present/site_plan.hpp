#pragma once

#include <string>
#include <vector>

#include "tools/present/figure.hpp"

namespace stillground::present {

/// One bore seen from above.
struct PlanBore {
  Point at;                ///< [m]
  bool hollow = false;     ///< of another depth than most, or of a later phase
  std::string label = {};  ///< beside it; empty: none
};

/// A site from above: x to the right, y up, one scale for both.
struct SitePlan {
  std::string id;
  std::string title;
  std::vector<std::string> subtitle;
  std::string description;
  std::vector<PlanBore> bores;
  std::vector<Point> outline;                  ///< of the plot; may be empty
  std::vector<std::vector<Point>> kept_clear;  ///< parts where nobody drills
};

/// The plan as one self-contained SVG element, 900 units wide, with a scale bar of a round length.
std::string svg(const SitePlan& plan);

}  // namespace stillground::present
