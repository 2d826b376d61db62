#pragma once

#include <cstddef>
#include <limits>
#include <vector>

namespace stillground::field {

/// The bore upstream of each on its circuit; `no_bore` for a circuit's first.
using Upstream = std::vector<std::size_t>;

inline constexpr std::size_t no_bore = std::numeric_limits<std::size_t>::max();

/// `in_series` bores after each other in their order make a circuit, the last one what is left. 1: every bore is its
/// own.
Upstream in_series(std::size_t bores, int in_series);

}  // namespace stillground::field
