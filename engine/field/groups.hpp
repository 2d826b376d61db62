#pragma once

#include <cstddef>
#include <vector>

#include "engine/field/circuits.hpp"
#include "engine/model/field.hpp"

namespace stillground::field {

/// Bores that share one ground grid. Groups are numbered by their first bore.
struct Groups {
  std::vector<std::size_t> of_bore;               ///< group of each bore
  std::vector<std::vector<std::size_t>> members;  ///< bores of each group, rising; the first stands for it

  std::size_t size() const { return members.size(); }
};

/// Groups from any number that bores of one group share and others do not.
Groups numbered(const std::vector<std::size_t>& alike);

/// Whether two bores have the same top, depth, start, stop and flow, lengths within 1 mm.
bool same_make(const model::BoreSite& a, const model::BoreSite& b);

/// Each bore a group of its own.
Groups lone_groups(std::size_t bores);

/// The coarsest grouping that changes nothing: bores of one group have equal top, depth, start, stop and flow,
/// the same distances to the bores of each group, and stand on their circuits between bores of equal groups. Then the
/// neighbours' sum of every member is the same, whatever the groups' own temperatures are, so that members of a group
/// stay equal for ever. Found by refining from "equal make" until nothing splits (colour refinement, the coarsest
/// equitable partition); bores that the layout's symmetry makes equal always end together. Distances count as equal
/// within 1 mm, below any surveyor's accuracy.
Groups equal_groups(const std::vector<model::BoreSite>& bores, const Upstream& upstream);

}  // namespace stillground::field
