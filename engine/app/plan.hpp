#pragma once

#include <string>

#include "engine/job/plan.hpp"

/// The account that `check` gives of a scenario.
namespace stillground::app {

/// For a person: a heading and short lines, a table of the flow's cases, warnings last.
std::string plan_text(const job::Plan& plan, int threads);

/// For machines: one object; a quantity is {"value": ..., "units": ...}, a count a bare number, an unknown value null.
std::string plan_json(const job::Plan& plan, UnitSystem system = UnitSystem::si);

}  // namespace stillground::app
