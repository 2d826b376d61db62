#pragma once

#include <string>

#include "engine/app/plan_figures.hpp"
#include "engine/job/plan.hpp"

// The parts of plan_text() that have files of their own.
namespace stillground::app {

/// "  NAME          TEXT\n".
std::string plan_line(const char* name, const std::string& text);

/// Loads, what they move through the bores' walls, and when.
std::string plan_heat_text(const job::Plan& plan, const Figures& figures);

/// What flows through a bore, and the phases of the field where there are several.
std::string plan_flow_text(const job::Plan& plan, const Figures& figures);
std::string plan_phases_text(const job::Plan& plan, const Figures& figures);

/// A table of the bore's resistances at the flows and temperatures that are foreseen.
std::string plan_resistances_text(const job::Plan& plan, const Figures& figures);

}  // namespace stillground::app
