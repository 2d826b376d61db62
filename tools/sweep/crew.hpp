#pragma once

#include <atomic>
#include <cstddef>
#include <functional>

namespace stillground::sweep {

/// Calls `work` on so many threads at once (0: as many as the machine has), the caller's among them. What one throws
/// sets `stop`, at which the others are to look, and is thrown again when all have ended.
void together(int threads, std::atomic<bool>& stop, const std::function<void()>& work);

/// Calls `each` with 0 to count - 1, on so many threads, in their order but for those at work at once; no further one
/// once `stop` is set.
void for_all(std::size_t count, int threads, std::atomic<bool>& stop, const std::function<void(std::size_t)>& each);

/// As many as are asked for, or as the machine has.
int threads_of(int asked);

}  // namespace stillground::sweep
