#pragma once

#include "engine/model/scenario.hpp"

namespace stillground::points {

/// What a layout takes to build, as far as prices ask for it.
struct Amounts {
  double bores = 0;
  double grout = 0;   ///< that fills the bores around their pipes, nothing added for waste [m3]
  double pipe = 0;    ///< in the bores, all legs [m]
  double trench = 0;  ///< the shortest that joins all bores on the plan; the way to the building is not in it [m]
};

/// The trench is the least spanning tree of the bores (Prim 1957 [from memory]): less than any header's, a measure for
/// layouts against each other.
Amounts amounts_of(const model::Scenario& scenario);

}  // namespace stillground::points
