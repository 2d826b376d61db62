#pragma once

#include <string>
#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/assembly/ground_heat.hpp"

/// What is worth saying before a run, topic by topic; warnings_before() gathers it. What counts as usual is common
/// practice, no source, unless a source is named.
namespace stillground::job {

/// The trench's depth and the bores'.
std::vector<Warning> bore_warnings(const assembly::Assembly& assembly);

/// Slow and fast flow in the loops, at full and at least flow.
std::vector<Warning> flow_warnings(const assembly::Assembly& assembly);

/// Heat per metre of bore beyond the usual.
std::vector<Warning> heat_warnings(const assembly::Assembly& assembly, const assembly::GroundHeats& heats);

/// Limits that the undisturbed ground breaks already, and those that let the fluid come near freezing.
std::vector<Warning> limit_warnings(const assembly::Assembly& assembly, const assembly::GroundHeats& heats);

/// Curves of COP that fall or rise the wrong way, or lie beyond what machines reach.
std::vector<Warning> cop_warnings(const model::Scenario& scenario);

/// Loads that peak in the other season, and a start in another age.
std::vector<Warning> calendar_warnings(const assembly::Assembly& assembly);

/// "laminar (Re 1203)".
std::string flow_in_words(double reynolds);

/// "Re 2300 and more (flow.reynolds_min)".
std::string asked_of_flow(const model::Scenario& scenario);

}  // namespace stillground::job
