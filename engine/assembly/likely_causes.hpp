#pragma once

#include <string>

#include "engine/assembly/assembly.hpp"

namespace stillground::assembly {

/// What may be wrong with a scenario whose temperatures leave what can be, from its own figures: those farthest from
/// what is usual first, one sentence. What counts as usual is common practice, no source.
std::string likely_causes(const Assembly& assembly);

/// Whether the loads alone ask more of a metre of bore than is usual.
bool loads_beyond_usual(const Assembly& assembly);

}  // namespace stillground::assembly
