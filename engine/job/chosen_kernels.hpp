#pragma once

#include <vector>

#include "engine/job/run.hpp"
#include "engine/march/fused/instruction_sets.hpp"

namespace stillground::job {

/// The kernels that a run marches with: those of the instruction set asked for; otherwise a resumed run goes on with
/// those that it began with, since others would end with other bytes, and a new run takes the best. `available`: by
/// this processor. Throws InputError for a set that is not among them, and for another than the checkpoint's.
const march::fused::Kernels& chosen_kernels(
    const Options& options,
    const std::vector<const march::fused::Kernels*>& available = march::fused::available_kernels());

}  // namespace stillground::job
