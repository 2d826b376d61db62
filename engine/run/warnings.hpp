#pragma once

#include <vector>

#include "engine/run/assembly.hpp"
#include "engine/run/tally.hpp"

namespace stillground::run {

/// What is worth saying before a run: the reader's and the assembly's own warnings, and what each topic of
/// warnings_parts.hpp finds unusual.
std::vector<Warning> warnings_before(const Assembly& assembly);

/// What is worth saying after it: curves left, fluid near freezing, ground below 0 degC, laminar hours.
std::vector<Warning> warnings_after(const Assembly& assembly, const Tally& tally);

}  // namespace stillground::run
