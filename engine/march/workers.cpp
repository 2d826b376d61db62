#include "engine/march/workers.hpp"

#include <atomic>
#include <cstdint>
#include <exception>
#include <mutex>
#include <optional>
#include <thread>
#include <utility>
#include <vector>

#if defined(__SSE2__)
#include <pmmintrin.h>
#include <xmmintrin.h>
#endif

namespace stillground::march {

namespace {

#if defined(__SSE2__)
unsigned flush_denormals() {
  const unsigned before = _mm_getcsr();
  _mm_setcsr(before | _MM_FLUSH_ZERO_ON | _MM_DENORMALS_ZERO_ON);
  return before;
}
void restore_denormals(unsigned before) {
  _mm_setcsr(before);
}
#else
unsigned flush_denormals() {
  return 0;
}
void restore_denormals(unsigned) {}
#endif

void pause() {
#if defined(__SSE2__)
  _mm_pause();
#endif
}

/// Calls come every few microseconds while a run goes on: look for the next one this often before going to sleep.
constexpr int patience = 2000;

template <class T>
void wait_for_change(const std::atomic<T>& flag, T seen) {
  for (int i = 0; i < patience; ++i) {
    if (flag.load(std::memory_order_acquire) != seen) return;
    pause();
  }
  flag.wait(seen, std::memory_order_acquire);
}

/// The part of a round's tasks that is meant for one thread: the round's number above, the tasks left in it below, so
/// that one exchange claims a task and a thread that is late by a round claims nothing.
struct alignas(64) Share {
  std::atomic<std::uint64_t> ticket{0};
  std::size_t first = 0;

  void open(std::uint32_t round, std::size_t from, std::size_t count) {
    first = from;
    ticket.store(std::uint64_t{round} << 32 | count, std::memory_order_release);
  }

  /// Takes one task, or none if they are gone or of another round.
  std::optional<std::size_t> claim(std::uint32_t round) {
    std::uint64_t seen = ticket.load(std::memory_order_acquire);
    while (seen >> 32 == round && (seen & 0xffffffffU) > 0) {
      if (ticket.compare_exchange_weak(seen, seen - 1, std::memory_order_acquire)) {
        return first + (seen & 0xffffffffU) - 1;
      }
    }
    return std::nullopt;
  }
};

}  // namespace

/// Each thread does its own share, whose data its cache still holds. What others have not begun it does only when they
/// keep it waiting: a thread that the machine has put aside holds up no more than the task it is in, while one that is
/// merely a little behind keeps its data.
struct Workers::Pool {
  explicit Pool(std::size_t count) : shares(count) {}

  std::vector<std::thread> threads;
  std::vector<Share> shares;
  // On a cache line each: what one thread writes must not slow what the other waits for.
  alignas(64) std::atomic<std::uint32_t> round{0};  // counts phases
  alignas(64) std::atomic<std::uint32_t> news{0};   // what the caller waits for: a phase, or the end
  alignas(64) std::atomic<std::size_t> finished{0};
  alignas(64) std::atomic<bool> done{true};
  std::atomic<bool> closing{false};
  Work job;
  std::size_t phase = 0;
  unsigned csr = 0;

  std::mutex failing;
  std::size_t failed_task = 0;
  std::exception_ptr failure;

  void open_round() {
    const std::uint32_t next = round.load(std::memory_order_relaxed) + 1;
    finished.store(0, std::memory_order_relaxed);
    const std::size_t tasks = job.tasks, count = shares.size();
    for (std::size_t worker = 0; worker < count; ++worker) {
      const std::size_t from = tasks * worker / count;
      shares[worker].open(next, from, tasks * (worker + 1) / count - from);
    }
    round.store(next, std::memory_order_release);
    round.notify_all();
  }

  void tell_caller() {
    news.fetch_add(1, std::memory_order_release);
    news.notify_all();
  }

  void work(std::size_t worker, std::uint32_t now) {
    empty(shares[worker], now);
    for (int i = 0; i < patience; ++i) {
      if (round.load(std::memory_order_acquire) != now || done.load(std::memory_order_acquire)) return;
      pause();
    }
    for (std::size_t n = 1; n < shares.size(); ++n) empty(shares[(worker + n) % shares.size()], now);
  }

  void empty(Share& share, std::uint32_t now) {
    while (const auto task = share.claim(now)) {
      fenced(*task, [&] { job.body(job.what, phase, *task); });
      // Read before the last one is counted: from then on it belongs to the next round.
      const std::size_t all = job.tasks;
      if (finished.fetch_add(1, std::memory_order_acq_rel) + 1 == all) end_phase();
    }
  }

  /// By the thread that did the phase's last task.
  void end_phase() {
    if (!failure) fenced(0, [&] { job.between(job.what, phase); });
    if (!failure && phase + 1 < job.phases) {
      ++phase;
      open_round();
    } else {
      done.store(true, std::memory_order_release);  // from here on the caller may begin another run
    }
    tell_caller();
  }

  template <class Body>
  void fenced(std::size_t task, Body&& body) noexcept {
    try {
      body();
    } catch (...) {
      const std::lock_guard lock(failing);
      if (!failure || task < failed_task) {
        failure = std::current_exception();
        failed_task = task;
      }
    }
  }

  void serve(std::size_t worker) {
    flush_denormals();
    for (std::uint32_t seen = 0;;) {
      wait_for_change(round, seen);
      seen = round.load(std::memory_order_acquire);
      if (closing) return;
      work(worker, seen);
    }
  }
};

Workers::Workers(int threads) : threads_(threads), pool_(std::make_unique<Pool>(static_cast<std::size_t>(threads))) {
  pool_->csr = flush_denormals();
  for (std::size_t worker = 1; worker < pool_->shares.size(); ++worker) {
    pool_->threads.emplace_back([this, worker] { pool_->serve(worker); });
  }
}

Workers::~Workers() {
  pool_->closing = true;
  pool_->round.fetch_add(1, std::memory_order_release);
  pool_->round.notify_all();
  for (auto& thread : pool_->threads) thread.join();
  restore_denormals(pool_->csr);
}

void Workers::run(const Work& work) {
  Pool& pool = *pool_;
  pool.job = work;
  pool.phase = 0;
  pool.done.store(false, std::memory_order_relaxed);
  pool.open_round();
  while (!pool.done.load(std::memory_order_acquire)) {
    const std::uint32_t seen = pool.news.load(std::memory_order_acquire);
    pool.work(0, pool.round.load(std::memory_order_acquire));
    if (!pool.done.load(std::memory_order_acquire)) wait_for_change(pool.news, seen);
  }
  if (pool.failure) std::rethrow_exception(std::exchange(pool.failure, nullptr));
}

}  // namespace stillground::march
