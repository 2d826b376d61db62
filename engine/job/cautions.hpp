#pragma once

#include <string>
#include <vector>

#include "engine/model/scenario.hpp"

namespace stillground::job {

/// What whoever builds this field must mind, in one sentence or two each: what this scenario calls for first
/// (antifreeze, deep bores, trench, pressure test, frost), then what holds for every field. The only place of these
/// texts; every verb, picture and result shows them from here. None replaces a local code or licensed practice. Source:
/// common practice, no source.
std::vector<std::string> cautions(const model::Scenario& scenario);

}  // namespace stillground::job
