#pragma once

#include <memory>

#include "engine/march/fused/instruction_sets.hpp"
#include "engine/march/stepper.hpp"
#include "engine/march/workers.hpp"

namespace stillground::march {

/// Fewer groups a thread than that, and what threads wait for each other costs more than they save.
inline constexpr std::size_t groups_worth_a_thread = 16;

/// How often the loop between field and heat pumps is closed.
enum class ClosureInterval {
  automatic,    ///< every stage in fields that are not worth two threads, else every span
  every_stage,  ///< of the scheme
  every_span    ///< of some steps, through which each group is marched before its inlet is known (fused::InletResponse)
};

/// The fast stepper: the same ARS(2,2,2) stages as the reference, written out so that a group's stage is one pass
/// through the ground (RingGround, or with two rates ModeGround), one up and one down the bore, the layers side by
/// side in registers. The threads stay together for the whole hour. The only stepper that knows two rates. README.md
/// beside this file says how it is laid out. `problem` and `workers` must outlive it.
///
/// Equal bits at any number of threads; between instruction sets, between closure intervals, and between it and the
/// reference, round-off.
std::unique_ptr<Stepper> make_fused_stepper(const Problem& problem, const Multirate& multirate, Workers& workers,
                                            const fused::Kernels& kernels = fused::best_kernels(),
                                            ClosureInterval closure = ClosureInterval::automatic);

}  // namespace stillground::march
