#pragma once

#include <string_view>
#include <vector>

#include "engine/march/fused/kernels.hpp"

namespace stillground::march::fused {

/// The kernels that this machine can run, the best first, "baseline" last. One binary runs anywhere. Where the machine
/// has fused multiply-adds they are used, and packs of layers are as wide as its registers: what two sets march differs
/// by round-off and what grows from it, what one set marches never does.
const std::vector<const Kernels*>& available_kernels();

/// The best of them.
const Kernels& best_kernels();

}  // namespace stillground::march::fused
