#pragma once

#include <vector>

#include "engine/field/circuits.hpp"
#include "engine/field/groups.hpp"
#include "engine/ground/grid.hpp"
#include "engine/march/problem.hpp"
#include "engine/model/scenario.hpp"

namespace stillground::assembly {

/// The layout's bores. Throws InputError at field.plot, where only the land can tell: it holds none, or too many.
std::vector<model::BoreSite> bores_of(const model::Scenario& scenario);

/// From where to where the bore is active.
ground::DepthInterval reach_of(const model::BoreSite& bore);

/// The groups as the march sees them: the part of each layer that the bores fill, and how they hang on their circuits.
std::vector<march::Group> march_groups(const ground::Grid& grid, const std::vector<model::BoreSite>& bores,
                                       const field::Groups& groups, const field::Upstream& upstream);

/// Throws InputError unless every circuit has as many bores, which are there as long as each other and carry the same
/// flow.
void check_circuits(const model::Scenario& scenario, const std::vector<model::BoreSite>& bores,
                    const field::Upstream& upstream);

/// Throws InputError where bores in series are to be merged: each one's inlet is another's outlet, so that bores with
/// equal neighbours are not equal.
void check_merging(const model::Scenario& scenario);

/// Sum of the circuits' flow weights.
double circuit_weights(const std::vector<model::BoreSite>& bores, const field::Upstream& upstream);

}  // namespace stillground::assembly
