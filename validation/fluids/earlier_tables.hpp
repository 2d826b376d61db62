#pragma once

#include "validation/harness/claim.hpp"

namespace stillground::validation::fluids {

/// Mixtures whose polynomials no table in tests/reference evaluates: held to an earlier edition of the author's tables.
void judge_methanol(Check& check);

/// The same, and held to what a maker says of two ready-made fluids.
void judge_potassium_acetate(Check& check);

}  // namespace stillground::validation::fluids
