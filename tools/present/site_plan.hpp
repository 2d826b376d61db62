#pragma once

#include <optional>
#include <string>
#include <vector>

#include "engine/base/unit_system.hpp"
#include "tools/present/figure.hpp"

namespace stillground::present {

/// One bore seen from above.
struct PlanBore {
  Point at;                              ///< [m]
  int phase = 0;                         ///< 0: works from the start; 1 and on: in the order of the dates
  bool shut_off = false;                 ///< at some time: crossed out
  std::vector<std::string> labels = {};  ///< beside it, the first that finds room
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
  std::optional<PlanArea> plot;               ///< the land
  std::vector<PlanArea> kept_clear;           ///< parts where nobody drills
  std::vector<PlanLink> links;                ///< bores in series
  std::optional<Point> chamber;               ///< where a fan's rays meet [m]
  std::vector<std::string> phase_texts = {};  ///< what the mark of each phase means; needed with a later one
  std::string shut_off_text = {};             ///< what a crossed mark means; needed with one
  std::string setback_text = {};              ///< what the strips mean; needed with a setback
  UnitSystem units = UnitSystem::si;          ///< of the distances
};

/// The plan as one self-contained SVG element, 900 units wide, with the distance of the nearest bores, how far the
/// field reaches, scale bars of round lengths in metres and feet, the directions of x and y, and a legend of the marks
/// that need one. Where bores stand too close for all their labels, those that begin and end rows go first.
std::string svg(const SitePlan& plan);

}  // namespace stillground::present
