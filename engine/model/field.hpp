#pragma once

#include <limits>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace stillground::model {

/// Rows and columns at one spacing, the first bore at the origin.
struct Grid {
  int rows = 0;        ///< along y
  int columns = 0;     ///< along x
  double spacing = 0;  ///< [m]
};

/// As a grid, every second row shifted by half a spacing and the rows as much closer, so that neighbours are equally
/// far in six directions.
struct Staggered {
  int rows = 0;
  int columns = 0;     ///< in each row
  double spacing = 0;  ///< between any two neighbours [m]
};

/// Bores along a line in x.
struct Line {
  int bores = 0;
  double spacing = 0;  ///< [m]
};

/// Two legs at right angles that share the bore at the corner, as round two sides of a building.
struct LShape {
  int along_x = 0;     ///< bores, the corner counted
  int along_y = 0;     ///< bores, the corner counted
  double spacing = 0;  ///< [m]
};

/// A base along x and an arm along y at each end of it; the corner bores belong to both.
struct UShape {
  int along_x = 0;     ///< bores of the base, corners counted
  int along_y = 0;     ///< bores of an arm, the corner counted
  double spacing = 0;  ///< [m]
};

/// Bores equally far apart on a circle.
struct Ring {
  int bores = 0;
  double spacing = 0;  ///< between neighbours, straight across [m]
};

/// Vertical bores on rays from one chamber.
struct Fan {
  int rays = 0;
  int bores_per_ray = 0;
  double first = 0;    ///< from the chamber to a ray's first bore [m]
  double spacing = 0;  ///< along a ray [m]
  double opening = 0;  ///< between the first and the last ray; 2 pi: all round, equally parted [rad]
};

struct PlanPoint {
  double x = 0;  ///< [m]
  double y = 0;  ///< [m]
};

/// A closed line on the plan; its first point follows its last. At least three points, no edge crosses another.
using Outline = std::vector<PlanPoint>;

/// Part of a plot that bores keep clear of.
struct KeepClear {
  Outline outline;
  double setback = 0;  ///< least distance of a bore's axis from it [m]
};

/// A plot of land and where on it nobody drills.
struct Land {
  Outline outline;
  double setback = 0;  ///< least distance of a bore's axis from the outline [m]
  std::vector<KeepClear> keep_clear;
};

/// Land filled with as many bores at one spacing as it holds.
struct Plot {
  enum class Pattern { square, staggered };

  Land land;
  double spacing = 0;  ///< [m]
  Pattern pattern = Pattern::square;
  double angle = 0;  ///< of the rows against x, counter-clockwise [rad]
};

/// One bore on the plan.
struct BoreSite {
  double x = 0;                                           ///< [m]
  double y = 0;                                           ///< [m]
  double top = 0;                                         ///< depth of the active bore's start [m]
  double depth = 0;                                       ///< active length [m]
  double start = 0;                                       ///< seconds after the run's start at which it begins to work
  double stop = std::numeric_limits<double>::infinity();  ///< seconds after the run's start at which it is shut off
  double flow_weight = 1;                                 ///< its flow against that of a bore of weight 1
  std::string name{};                                     ///< as surveyed; often empty
};

/// Surveyed positions; depth, top and start already filled in from the bore where a row has none.
struct Positions {
  std::vector<BoreSite> sites;
  std::optional<Land> land{};  ///< where they stand, if it is known
};

using Layout = std::variant<Grid, Staggered, Line, LShape, UShape, Ring, Fan, Plot, Positions>;

/// The land of a layout that has one.
inline const Land* land_of(const Layout& layout) {
  if (const auto* plot = std::get_if<Plot>(&layout)) return &plot->land;
  const auto* positions = std::get_if<Positions>(&layout);
  return positions != nullptr && positions->land ? &*positions->land : nullptr;
}

}  // namespace stillground::model
