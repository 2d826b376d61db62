#include "tools/sweep/crew.hpp"

#include <algorithm>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace stillground::sweep {

int threads_of(int asked) {
  return asked > 0 ? asked : std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
}

void together(int threads, std::atomic<bool>& stop, const std::function<void()>& work) {
  std::mutex guard;
  std::exception_ptr first;
  const auto held = [&] {
    try {
      work();
    } catch (...) {
      const std::lock_guard lock(guard);
      if (!first) first = std::current_exception();
      stop = true;
    }
  };
  {
    std::vector<std::jthread> others;
    for (int i = 1; i < threads_of(threads); ++i) others.emplace_back(held);
    held();
  }
  if (first) std::rethrow_exception(first);
}

void for_all(std::size_t count, int threads, std::atomic<bool>& stop, const std::function<void(std::size_t)>& each) {
  std::atomic<std::size_t> next{0};
  const int useful = static_cast<int>(std::min<std::size_t>(count, static_cast<std::size_t>(threads_of(threads))));
  together(std::max(useful, 1), stop, [&] {
    for (std::size_t i = next++; i < count && !stop; i = next++) each(i);
  });
}

}  // namespace stillground::sweep
