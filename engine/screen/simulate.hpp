#pragma once

#include <vector>

#include "engine/run/run.hpp"

namespace stillground::screen {

/// Estimates the scenario's hours without a march and writes a result file that holds them and no fields, its `method`
/// "screening". Takes of the options the result's place, what stops it and the progress, which it
/// looks at and tells at the end of each run-year. Returns all warnings. Throws as run::simulate, and InputError at
/// run.method where there is no such estimate.
std::vector<Warning> simulate(const model::Scenario& scenario, const run::Options& options);

}  // namespace stillground::screen
