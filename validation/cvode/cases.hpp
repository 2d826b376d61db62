#pragma once

#include <vector>

#include "engine/assembly/assembly.hpp"
#include "validation/reference_solutions/field_equations.hpp"

namespace stillground::validation {

/// One bore of 60 m in two layers of ground under a yearly wave, and three in a row (two groups) at `spacing` [m];
/// invented. The layers are those of the engine's own grid; the rings are its own as well, out to 12 m (lone bore), or
/// 24 out to 45 m (a row), where nothing arrives within the time marched.
model::Scenario lone_bore();
model::Scenario three_bores(double spacing);

/// The same field as plain numbers for the reference solution. `problem` must outlive it (T0 is read from there).
reference_solutions::Field field_of(const march::Problem& problem);
reference_solutions::Flow flow_of(const march::FlowRegime& regime);

/// Hourly heat to the ground of a lone bore [W]: as strongly random as a load can be, between -`most` and `most`. With
/// `idle`, a quarter of the hours are without.
std::vector<double> jumping_load(std::size_t hours, double most, bool idle);

}  // namespace stillground::validation
