#pragma once

#include <variant>
#include <vector>

namespace stillground::model {

/// Rows and columns at one spacing, the first bore at the origin.
struct Grid {
  int rows = 0;        ///< along y
  int columns = 0;     ///< along x
  double spacing = 0;  ///< [m]
};

/// One bore on the plan.
struct BoreSite {
  double x = 0;      ///< [m]
  double y = 0;      ///< [m]
  double top = 0;    ///< depth of the active bore's start [m]
  double depth = 0;  ///< active length [m]
  double start = 0;  ///< seconds after the run's start at which it begins to work
};

/// Surveyed positions; depth, top and start already filled in from the bore where a row has none.
struct Positions {
  std::vector<BoreSite> sites;
};

using Layout = std::variant<Grid, Positions>;

}  // namespace stillground::model
