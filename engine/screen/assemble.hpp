#pragma once

#include "engine/assembly/assembly.hpp"

namespace stillground::screen {

/// A scenario made ready to be screened. Its bores stand in few groups (field::alike_circuits), whatever `run.groups`
/// asks for, since nothing but the field's mean is asked of them. Throws as assembly::assemble.
assembly::Assembly assemble(model::Scenario scenario,
                            const march::fused::Kernels& kernels = march::fused::best_kernels());

}  // namespace stillground::screen
