#pragma once

#include <memory>

#include "engine/march/stepper.hpp"
#include "engine/march/workers.hpp"

namespace stillground::march {

/// The reference stepper: ARKODE's ARKStep with the ARS(2,2,2) tables, our own vector operations and our own nonlinear
/// solver, which solves each affine stage directly. Every ring takes every step: `multirate.slow` is not looked at.
/// `problem` and `workers` must outlive it. Throws SystemError if SUNDIALS refuses.
std::unique_ptr<Stepper> make_arkode_stepper(const Problem& problem, const Multirate& multirate, Workers& workers);

}  // namespace stillground::march
