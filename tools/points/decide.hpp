#pragma once

#include <filesystem>

#include "engine/job/run.hpp"
#include "engine/job/screened.hpp"
#include "tools/results/decision.hpp"

/// One scenario among many: what it decides, by either method, told alike.
namespace stillground::points {

/// What a screening in memory decides.
results::Decision decision_of(const job::Screened& screened);

/// Whether a limit on minutes is among the scenario's.
bool judges_minutes(const model::Scenario& scenario);

/// Screens the scenario in memory, whatever method it asks for. `batch`: of the same geometry, or null. Throws as
/// job::screened.
results::Decision screen(const model::Scenario& scenario, const screen::Batch* batch = nullptr);

/// Marches the scenario, whatever method it asks for, and reads its result back. Throws as job::run.
results::Decision march(model::Scenario scenario, const job::Options& options);

}  // namespace stillground::points
