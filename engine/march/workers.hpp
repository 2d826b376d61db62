#pragma once

#include <cstddef>
#include <memory>
#include <type_traits>

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
    if (threads_ == 1 || tasks < 2) {
      for (std::size_t i = 0; i < tasks; ++i) body(i);
      return;
    }
    using Callable = std::remove_reference_t<Body>;
    run(tasks, std::addressof(body),
        [](const void* what, std::size_t i) { (*static_cast<Callable*>(const_cast<void*>(what)))(i); });
  }

  /// Of `tasks` the contiguous part that is meant for thread `index`: [from, end).
  struct Part {
    std::size_t from = 0, end = 0;
  };
  Part part(std::size_t tasks, std::size_t index) const {
    const auto count = static_cast<std::size_t>(threads_);
    return {tasks * index / count, tasks * (index + 1) / count};
  }

  /// A thread among those that work as a team.
  class Team {
   public:
    Team(Workers& workers, std::size_t index) : workers_(workers), index_(index) {}

    std::size_t index() const { return index_; }

    /// Returns when all have called it as often; what each did before is then seen by all.
    void barrier() {
      if (workers_.threads_ > 1) workers_.barrier(index_);
    }

   private:
    Workers& workers_;
    std::size_t index_;
  };

  /// Calls body(team) once on every thread at the same time. To wait for each other costs them a quarter of a
  /// microsecond, a tenth of what `each` does: for work whose steps last some microseconds. If one throws, all must,
  /// between the same two barriers.
  template <class Body>
  void as_team(Body&& body) {
    // A thread takes up another's task only after its own, for which all others must have come.
    each(static_cast<std::size_t>(threads_), [&](std::size_t index) {
      Team team(*this, index);
      body(team);
    });
  }

 private:
  using Call = void (*)(const void* what, std::size_t task);
  void run(std::size_t tasks, const void* what, Call call);
  void barrier(std::size_t index);

  struct Pool;
  int threads_;
  std::unique_ptr<Pool> pool_;
};

}  // namespace stillground::march
