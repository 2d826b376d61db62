#pragma once

#include <memory>

#include "engine/assembly/assembly.hpp"
#include "engine/march/stepper.hpp"
#include "engine/march/workers.hpp"

namespace stillground::simulation {

/// Whether this build holds the reference stepper (CMake's option STILLGROUND_REFERENCE_STEPPER), for which it needs
/// SUNDIALS.
extern const bool has_reference_stepper;

/// Throws InputError at run.stepper if the scenario asks for the reference stepper where there is none.
void refuse_missing_stepper(const model::Scenario& scenario, bool has_reference = has_reference_stepper);

/// The stepper that the assembly's scenario asks for; the only place where one is chosen. `assembly` and `workers` must
/// outlive it. Throws as refuse_missing_stepper; SystemError if SUNDIALS refuses.
std::unique_ptr<march::Stepper> make_stepper(const assembly::Assembly& assembly, march::Workers& workers);

}  // namespace stillground::simulation
