#include "engine/record/write/background.hpp"

#include <utility>

namespace stillground::record {

Background::Background(std::size_t limit) : limit_(limit), thread_([this] { run(); }) {}

Background::~Background() {
  {
    const std::lock_guard lock(mutex_);
    stop_ = true;
  }
  changed_.notify_all();
  thread_.join();
}

void Background::post(std::function<void()> job, std::size_t bytes) {
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [&] { return failed_ || jobs_ == 0 || bytes_ + bytes <= limit_; });
  rethrow();
  ++jobs_;
  bytes_ += bytes;
  waiting_.push_back({std::move(job), bytes});
  changed_.notify_all();
}

void Background::finish() {
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [&] { return failed_ || jobs_ == 0; });
  rethrow();
}

void Background::rethrow() {
  if (failed_) std::rethrow_exception(failed_);
}

void Background::run() {
  std::unique_lock lock(mutex_);
  for (;;) {
    changed_.wait(lock, [&] { return stop_ || !waiting_.empty(); });
    if (stop_) return;
    Job job = std::move(waiting_.front());
    waiting_.pop_front();
    lock.unlock();
    std::exception_ptr failed;
    try {
      job.work();
    } catch (...) {
      failed = std::current_exception();
    }
    job.work = nullptr;  // its memory is free before its bytes are
    lock.lock();
    --jobs_;
    bytes_ -= job.bytes;
    changed_.notify_all();
    if (failed) {
      failed_ = failed;
      return;
    }
  }
}

}  // namespace stillground::record
