#pragma once

#include <optional>
#include <string>
#include <vector>

#include "tools/present/figure.hpp"

namespace stillground::present {

/// One bore seen from above.
struct PlanBore {
  Point at;                ///< [m]
  bool later = false;      ///< begins to work in a later phase: hollow
  bool shut_off = false;   ///< at some time: crossed out
  std::string label = {};  ///< beside it, where there is room; empty: none
};

/// A closed outline, and how far bores stay away from it.
struct PlanArea {
  std::vector<Point> outline;  ///< [m]
  double setback = 0;          ///< [m]
};

/// The fluid goes from one bore to the next.
struct PlanLink {
  Point from, to;  ///< [m]
};

/// A site from above: x to the right, y up, one scale for both.
struct SitePlan {
  std::string id;
  std::string title;
  std::vector<std::string> subtitle;
  std::string description;
  std::vector<std::string> footnotes = {};  ///< below everything, small; broken into lines by the drawing
  std::vector<PlanBore> bores;
  std::optional<PlanArea> plot;      ///< the land
  std::vector<PlanArea> kept_clear;  ///< parts where nobody drills
  std::vector<PlanLink> links;       ///< bores in series
  std::optional<Point> chamber;      ///< where a fan's rays meet [m]
  std::string later_text = {};       ///< what a hollow mark means; needed with one
  std::string shut_off_text = {};    ///< what a crossed mark means; needed with one
};

/// The plan as one self-contained SVG element, 900 units wide, with a scale bar of a round length, the directions of x
/// and y, and a legend of the marks that need one.
std::string svg(const SitePlan& plan);

}  // namespace stillground::present
