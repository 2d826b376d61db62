#pragma once

#include "tools/scenarios/variation.hpp"

namespace stillground::scenarios {

/// Counts of bores that fill the scenario's shape at its spacing: grids and staggered rows row by row, lines, rings,
/// the last leg of an L, both arms of a U, the rays of a fan; or a plot of land, each count at the widest spacing that
/// still brings it. Throws InputError as variation_of.
Variation counts(const VaryRequest& request, const model::Scenario& base);

}  // namespace stillground::scenarios
