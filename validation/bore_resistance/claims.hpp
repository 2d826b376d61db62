#pragma once

#include "validation/harness/claim.hpp"

namespace stillground::validation {

/// A single U's R_b and R_a at fixed orders, with the order raised, and in the closed forms of first order.
void judge_single_u(Check& check);

/// A double U's resistance matrix.
void judge_double_u(Check& check);

/// R_b* of both limits in closed form.
void judge_effective(Check& check);

/// Sections that have an exact answer: one pipe in the middle, or off it within a wall of one temperature.
void judge_exact_sections(Check& check);

/// What a run marches with, from the scenario's pipe, fluid and flow on.
void judge_run(Check& check);

}  // namespace stillground::validation
