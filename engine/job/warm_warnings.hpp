#pragma once

#include <vector>

#include "engine/base/errors.hpp"
#include "engine/model/scenario.hpp"

namespace stillground::job {

/// What is worth saying of a run whose fluid came to `warmest` [K]: beyond its data, above what the pipe's pressure
/// rating is for, near boiling.
std::vector<Warning> warm_warnings(const model::Scenario& scenario, double warmest);

}  // namespace stillground::job
