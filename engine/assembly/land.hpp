#pragma once

#include <vector>

#include "engine/base/errors.hpp"
#include "engine/model/scenario.hpp"

namespace stillground::assembly {

/// Surveyed bores against the land they are said to stand on: one warning for the outline and one for each part kept
/// clear, with the bore that keeps least from it. A bore may stand where it was drilled, so none is refused; InputError
/// if all stand outside, which is another origin.
std::vector<Warning> land_warnings(const model::Scenario& scenario);

}  // namespace stillground::assembly
