#pragma once

#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/simulation/statistics.hpp"

namespace stillground::job {

/// What is worth saying before a run: the reader's and the assembly's own warnings, and what each topic of
/// warnings_parts.hpp finds unusual.
std::vector<Warning> warnings_before(const assembly::Assembly& assembly);

/// What is worth saying after it: curves left, fluid near freezing, ground below 0 degC, laminar hours.
std::vector<Warning> warnings_after(const assembly::Assembly& assembly, const simulation::Statistics& statistics);

}  // namespace stillground::job
