#pragma once

#include <cstddef>
#include <functional>
#include <vector>

#include "engine/field/groups.hpp"
#include "engine/model/field.hpp"

namespace stillground::field {

/// Few groups where only the field's mean is asked for: circuits of equal make, ranked by the summed effect of all
/// other bores on theirs, are cut into at most `most` classes of nearly equal size, the bores at one place of a class's
/// circuits being a group. `effect` of a bore on another at a distance [m], in any unit. In a mean over a class the
/// first-order differences of its circuits cancel, and of the field's mean answer those between classes matter to
/// second order only.
Groups alike_circuits(const std::vector<model::BoreSite>& bores, std::size_t in_series, std::size_t most,
                      const std::function<double(double)>& effect);

}  // namespace stillground::field
