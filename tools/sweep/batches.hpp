#pragma once

#include <atomic>
#include <condition_variable>
#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <vector>

#include "tools/sweep/point.hpp"

namespace stillground::sweep {

/// Shares points to be screened out among threads so that each response is made once, while others are at work, and
/// kept only as long as somebody needs it.
class Batches {
 public:
  /// `numbers`: of the points, rising.
  Batches(const Points& points, const std::vector<std::size_t>& numbers);

  struct Task {
    std::size_t number = 0;
    std::shared_ptr<const screen::Batch> batch;  ///< null: it has a response of its own
  };

  /// The next point; makes its response first where that is needed. None: nothing is left, or `stop` was set.
  std::optional<Task> next(const std::atomic<bool>& stop);

 private:
  enum class State { untouched, making, ready };
  struct Group {
    std::size_t middle = 0;
    std::deque<std::size_t> left;
    State state = State::untouched;
    std::shared_ptr<const screen::Batch> batch;
  };

  Group* find(State state);
  void make(Group& group, std::unique_lock<std::mutex>& lock);

  const Points& points_;
  std::mutex guard_;
  std::condition_variable made_;
  std::vector<Group> groups_;  // begun in their order
  std::size_t first_ = 0;      // of those with points left
};

}  // namespace stillground::sweep
