#pragma once

#include <condition_variable>
#include <cstddef>
#include <deque>
#include <exception>
#include <functional>
#include <mutex>
#include <thread>

namespace stillground::record {

/// A thread that does jobs one after the other in the order in which they were handed over. The first exception ends
/// its work: it comes back from the next call, and jobs that follow are dropped.
class Background {
 public:
  /// `limit`: bytes that may wait; who hands over more waits himself.
  explicit Background(std::size_t limit);
  /// Drops what has not begun.
  ~Background();
  Background(const Background&) = delete;
  Background& operator=(const Background&) = delete;

  /// Hands over a job that holds `bytes` of memory. Throws what an earlier one threw.
  void post(std::function<void()> job, std::size_t bytes);

  /// Waits until everything is done. Throws what a job threw.
  void finish();

 private:
  struct Job {
    std::function<void()> work;
    std::size_t bytes = 0;
  };

  void run();
  void rethrow();  // with the lock held

  const std::size_t limit_;
  std::mutex mutex_;
  std::condition_variable changed_;
  std::deque<Job> waiting_;
  std::size_t jobs_ = 0, bytes_ = 0;  // that wait or are at work
  bool stop_ = false;
  std::exception_ptr failed_;
  std::thread thread_;  // last: it uses what stands above
};

}  // namespace stillground::record
