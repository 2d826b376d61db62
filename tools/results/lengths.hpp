#pragma once

#include <string>
#include <utility>
#include <vector>

#include "tools/results/plan.hpp"

/// Lengths of a command line: "12.5" is in metres, "40 ft" and "12 m" bring their unit.
namespace stillground::results {

/// Throws InputError that names `option`.
double read_length(const std::string& text, const std::string& option);

/// "x,y; x,y; ...": places of the plan [m].
std::vector<PlanPoint> read_places(const std::string& text, const std::string& option);

/// "x0,y0,x1,y1": two places.
std::pair<PlanPoint, PlanPoint> read_section(const std::string& text, const std::string& option);

}  // namespace stillground::results
