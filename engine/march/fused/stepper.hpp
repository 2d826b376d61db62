#pragma once

#include <memory>

#include "engine/march/fused/instruction_sets.hpp"
#include "engine/march/stepper.hpp"
#include "engine/march/workers.hpp"

namespace stillground::march {

/// The fast stepper: the same ARS(2,2,2) stages as the reference, written out so that a group's stage is one pass
/// through the ground (RingGround, or with two clocks ModeGround), one up and one down the bore, the layers side by
/// side in registers. The threads stay together for the whole hour and meet twice a step, where field and heat pumps
/// meet. The only stepper that knows problem.clocks. `problem` and `workers` must outlive it.
///
/// Equal bits at any number of threads; between instruction sets, and between it and the reference, round-off.
std::unique_ptr<Stepper> make_fused_stepper(const Problem& problem, Workers& workers,
                                            const fused::Kernels& kernels = *fused::available_kernels().front());

}  // namespace stillground::march
