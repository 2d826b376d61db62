#pragma once

#include <cstddef>
#include <memory>
#include <utility>

namespace stillground::march {

/// A few threads that divide the groups of a field among them. Each task is done whole by one thread and writes only
/// its own slot, so the bits do not depend on how many threads there are. While it lives, every thread (the caller's
/// included) flushes denormals to zero: far away theta starts denormal, and each such number costs a hundred others.
class Workers {
 public:
  /// `threads` >= 1, the caller's among them.
  explicit Workers(int threads);
  ~Workers();
  Workers(const Workers&) = delete;
  Workers& operator=(const Workers&) = delete;

  int threads() const { return threads_; }

  /// Calls body(i) for i in [0, tasks): contiguous shares, one a thread, and who is through helps the others; returns
  /// when all are done. An exception of any task is rethrown here after the others have finished (that of the lowest
  /// task if there are several).
  template <class Body>
  void each(std::size_t tasks, Body&& body) {
    in_phases(
        1, tasks, [&](std::size_t, std::size_t i) { body(i); }, [](std::size_t) {});
  }

  /// Calls body(phase, i) for every phase of [0, phases) and i in [0, tasks), a phase's tasks divided as above; when
  /// all of a phase are done, one thread calls between(phase), and then the next begins. After an exception no further
  /// phase does.
  template <class Body, class Between>
  void in_phases(std::size_t phases, std::size_t tasks, Body&& body, Between&& between) {
    if (threads_ == 1 || tasks < 2) {
      for (std::size_t phase = 0; phase < phases; ++phase) {
        for (std::size_t i = 0; i < tasks; ++i) body(phase, i);
        between(phase);
      }
      return;
    }
    const auto both = std::make_pair(std::addressof(body), std::addressof(between));
    using Both = decltype(both);
    run({phases, tasks, &both,
         [](const void* b, std::size_t phase, std::size_t i) { (*static_cast<Both*>(b)->first)(phase, i); },
         [](const void* b, std::size_t phase) { (*static_cast<Both*>(b)->second)(phase); }});
  }

 private:
  struct Work {
    std::size_t phases = 0;
    std::size_t tasks = 0;
    const void* what = nullptr;
    void (*body)(const void* what, std::size_t phase, std::size_t task) = nullptr;
    void (*between)(const void* what, std::size_t phase) = nullptr;
  };
  void run(const Work& work);

  struct Pool;
  int threads_;
  std::unique_ptr<Pool> pool_;
};

}  // namespace stillground::march
