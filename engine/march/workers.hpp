#pragma once

#include <atomic>
#include <cstddef>
#include <cstdint>
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
    run(
        tasks, [](const void* b, std::size_t i) { (*static_cast<Callable<Body>*>(const_cast<void*>(b)))(i); },
        std::addressof(body));
  }

  /// Where threads that work together wait for each other.
  class Rendezvous {
   public:
    explicit Rendezvous(std::size_t count) : count_(count) {}
    /// Returns when all have called it; what each did before is then seen by all.
    void wait();

   private:
    std::size_t count_;
    alignas(64) std::atomic<std::size_t> arrived_{0};
    alignas(64) std::atomic<std::uint32_t> turn_{0};
  };

  /// A thread among those that work together.
  struct Crew {
    std::size_t index = 0;
    std::size_t count = 1;
    Rendezvous* meeting_place = nullptr;

    void wait() { meeting_place->wait(); }

    /// Of `tasks` the contiguous share that is this thread's: [from, to).
    std::size_t from(std::size_t tasks) const { return tasks * index / count; }
    std::size_t to(std::size_t tasks) const { return tasks * (index + 1) / count; }
  };

  /// Calls body(crew) once on every thread at the same time; between two calls of crew.wait() each does what is its
  /// own. If one throws, all must, between the same two.
  template <class Body>
  void together(Body&& body) {
    const auto count = static_cast<std::size_t>(threads_);
    Rendezvous place(count);
    // A thread takes up another's task only after its own, for which all others must have come.
    each(count, [&](std::size_t index) {
      Crew crew{index, count, &place};
      body(crew);
    });
  }

 private:
  template <class Body>
  using Callable = std::remove_reference_t<Body>;
  using Call = void (*)(const void* body, std::size_t task);
  void run(std::size_t tasks, Call call, const void* body);

  struct Pool;
  int threads_;
  std::unique_ptr<Pool> pool_;
};

}  // namespace stillground::march
