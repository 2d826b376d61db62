#include "engine/march/workers.hpp"

#include <atomic>
#include <exception>
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

/// Calls come every few microseconds while a run goes on: look for the next one this often before going to sleep.
constexpr int patience = 4000;

void wait_for_change(const std::atomic<unsigned>& flag, unsigned seen) {
  for (int i = 0; i < patience; ++i) {
    if (flag.load(std::memory_order_acquire) != seen) return;
#if defined(__SSE2__)
    _mm_pause();
#endif
  }
  flag.wait(seen, std::memory_order_acquire);
}

}  // namespace

struct Workers::Pool {
  std::vector<std::thread> threads;
  std::vector<std::exception_ptr> held;
  std::atomic<unsigned> round{0};
  std::atomic<unsigned> done{0};
  bool closing = false;
  std::size_t tasks = 0;
  Call call = nullptr;
  const void* body = nullptr;
  unsigned csr = 0;

  void share(std::size_t worker, std::size_t workers) noexcept {
    try {
      const std::size_t from = tasks * worker / workers;
      const std::size_t to = tasks * (worker + 1) / workers;
      for (std::size_t i = from; i < to; ++i) call(body, i);
    } catch (...) {
      held[worker] = std::current_exception();
    }
  }

  void serve(std::size_t worker, std::size_t workers) {
    flush_denormals();
    for (unsigned seen = 0;;) {
      wait_for_change(round, seen);
      seen = round.load(std::memory_order_acquire);
      if (closing) return;
      share(worker, workers);
      done.fetch_add(1, std::memory_order_release);
      done.notify_one();
    }
  }
};

Workers::Workers(int threads) : threads_(threads), pool_(std::make_unique<Pool>()) {
  pool_->csr = flush_denormals();
  const auto count = static_cast<std::size_t>(threads);
  pool_->held.resize(count);
  for (std::size_t worker = 1; worker < count; ++worker) {
    pool_->threads.emplace_back([this, worker, count] { pool_->serve(worker, count); });
  }
}

Workers::~Workers() {
  pool_->closing = true;
  pool_->round.fetch_add(1, std::memory_order_release);
  pool_->round.notify_all();
  for (auto& thread : pool_->threads) thread.join();
  restore_denormals(pool_->csr);
}

void Workers::run(std::size_t tasks, Call call, const void* body) {
  Pool& pool = *pool_;
  pool.tasks = tasks;
  pool.call = call;
  pool.body = body;
  pool.done.store(0, std::memory_order_relaxed);
  pool.round.fetch_add(1, std::memory_order_release);
  pool.round.notify_all();
  pool.share(0, static_cast<std::size_t>(threads_));
  const auto others = static_cast<unsigned>(threads_ - 1);
  for (unsigned seen; (seen = pool.done.load(std::memory_order_acquire)) != others;) wait_for_change(pool.done, seen);
  for (auto& error : pool.held) {
    if (error) std::rethrow_exception(std::exchange(error, nullptr));
  }
}

}  // namespace stillground::march
