#include "engine/march/workers.hpp"

#include <atomic>
#include <cstdint>
#include <exception>
#include <mutex>
#include <optional>
#include <thread>
#include <utility>
#include <vector>

#include "engine/march/denormals.hpp"

#if defined(__SSE2__)
#include <emmintrin.h>
#endif

namespace stillground::march {

namespace {

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
struct alignas(128) Share {
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

/// How often a thread has come to where all meet.
struct alignas(128) Arrival {
  std::atomic<std::uint32_t> times{0};
};

}  // namespace

/// Each thread does its own share, whose data its cache still holds. What others have not begun it does only when they
/// keep it waiting: a thread that the machine has put aside holds up no more than the task it is in, while one that is
/// merely a little behind keeps its data.
struct Workers::Pool {
  explicit Pool(std::size_t count) : shares(count), arrivals(count) {}

  std::vector<std::thread> threads;
  std::vector<Share> shares;
  // On a cache line each: what one thread writes must not slow what another waits for.
  alignas(64) std::atomic<std::uint32_t> round{0};
  alignas(64) std::atomic<std::size_t> finished{0};
  std::atomic<bool> closing{false};
  std::atomic<std::size_t> tasks{0};  // looked at, too, by who comes late to a round that is over
  const void* what = nullptr;
  Call call = nullptr;
  unsigned csr = 0;
  std::vector<Arrival> arrivals;  // [thread]

  std::mutex failing;
  std::size_t failed_task = 0;
  std::exception_ptr failure;

  void work(std::size_t worker, std::uint32_t now) {
    empty(shares[worker], now);
    for (int i = 0; i < patience; ++i) {
      const bool all_done = finished.load(std::memory_order_acquire) == tasks.load(std::memory_order_relaxed);
      if (all_done || round.load(std::memory_order_acquire) != now) return;
      pause();
    }
    for (std::size_t n = 1; n < shares.size(); ++n) empty(shares[(worker + n) % shares.size()], now);
  }

  void empty(Share& share, std::uint32_t now) {
    while (const auto task = share.claim(now)) {
      perform(*task);
      // Read before the last one is counted: from then on it belongs to the next round.
      const std::size_t all = tasks.load(std::memory_order_relaxed);
      if (finished.fetch_add(1, std::memory_order_acq_rel) + 1 == all) finished.notify_one();
    }
  }

  void perform(std::size_t task) noexcept {
    try {
      call(what, task);
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

void Workers::run(std::size_t tasks, const void* what, Call call) {
  Pool& pool = *pool_;
  pool.tasks.store(tasks, std::memory_order_relaxed);
  pool.what = what;
  pool.call = call;
  pool.finished.store(0, std::memory_order_relaxed);
  const std::uint32_t now = pool.round.load(std::memory_order_relaxed) + 1;
  for (std::size_t worker = 0; worker < pool.shares.size(); ++worker) {
    const Part own = part(tasks, worker);
    pool.shares[worker].open(now, own.from, own.end - own.from);
  }
  pool.round.store(now, std::memory_order_release);
  pool.round.notify_all();
  pool.work(0, now);
  for (std::size_t seen; (seen = pool.finished.load(std::memory_order_acquire)) != tasks;) {
    wait_for_change(pool.finished, seen);
  }
  if (pool.failure) std::rethrow_exception(std::exchange(pool.failure, nullptr));
}

/// Each writes a line of its own and reads the others': one trip of a cache line, where a common counter takes several.
void Workers::barrier(std::size_t index) {
  std::vector<Arrival>& arrivals = pool_->arrivals;
  const std::uint32_t now = arrivals[index].times.load(std::memory_order_relaxed) + 1;
  arrivals[index].times.store(now, std::memory_order_release);
  for (const Arrival& other : arrivals) {
    for (int i = 0; static_cast<std::int32_t>(other.times.load(std::memory_order_acquire) - now) < 0; ++i) {
      // One that the machine has put aside may need this very core.
      if (i < patience) {
        pause();
      } else {
        std::this_thread::yield();
      }
    }
  }
}

}  // namespace stillground::march
