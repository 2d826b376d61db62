#pragma once

#include <atomic>
#include <functional>

#include "tools/sweep/display.hpp"
#include "tools/sweep/state.hpp"

namespace stillground::sweep {

struct Hands {
  int threads = 0;                                   ///< 0: as many as the machine has
  std::function<const std::atomic<bool>&()> listen;  ///< see job::Options; may be empty
  Display* display = nullptr;                        ///< may be null
};

/// Screens and marches what is missing until nothing is, and returns how all stand. Whatever is in the folder already
/// is not done again. Throws SystemError, and Interrupted when asked to stop: every finished point is kept then.
State work_through(const Points& points, const Hands& hands);

/// What is next for one point: its screening, or the march that the plan asks for by what stands in the folder. Nothing
/// if it is done. For many processes that share the folder, this point's or others'.
void work_on(const Points& points, std::size_t number, const Hands& hands);

}  // namespace stillground::sweep
