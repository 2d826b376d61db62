#pragma once

#include <string_view>
#include <vector>

#include "engine/march/fused/kernels.hpp"

namespace stillground::march::fused {

/// The kernels that this machine can run, the best first; at least one. One binary runs anywhere.
const std::vector<const Kernels*>& available_kernels();

}  // namespace stillground::march::fused
