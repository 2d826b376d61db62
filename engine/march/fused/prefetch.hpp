#pragma once

#include "engine/march/problem.hpp"

namespace stillground::march::fused {

/// Asks for a regime that another core has just made, all of it at once: line by line each would be waited for.
/// nullptr: nothing.
inline void prefetch([[maybe_unused]] const FlowRegime* regime) {
#if defined(__GNUC__)
  if (!regime) return;
  const auto lines = [](const void* from, std::size_t bytes) {
    for (std::size_t at = 0; at < bytes; at += 64) __builtin_prefetch(static_cast<const char*>(from) + at);
  };
  lines(regime->networks.data(), regime->networks.size() * sizeof(bore::Network));
  lines(regime->of_layer.data(), regime->of_layer.size() * sizeof(std::size_t));
#endif
}

}  // namespace stillground::march::fused
