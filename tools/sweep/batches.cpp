#include "tools/sweep/batches.hpp"

#include <map>

namespace stillground::sweep {

Batches::Batches(const Points& points, const std::vector<std::size_t>& numbers) : points_(points) {
  std::map<std::size_t, std::size_t> place;  // of a middle
  for (const std::size_t number : numbers) {
    const std::size_t middle = points.walk().middle(number);
    const auto [found, is_new] = place.try_emplace(middle, groups_.size());
    if (is_new) groups_.push_back({middle, {}, State::untouched, nullptr});
    groups_[found->second].left.push_back(number);
  }
}

Batches::Group* Batches::find(State state) {
  while (first_ < groups_.size() && groups_[first_].left.empty()) ++first_;
  for (std::size_t i = first_; i < groups_.size(); ++i) {
    if (groups_[i].state == state && !groups_[i].left.empty()) return &groups_[i];
    if (groups_[i].state == State::untouched) return nullptr;  // so are all behind it
  }
  return nullptr;
}

void Batches::make(Group& group, std::unique_lock<std::mutex>& lock) {
  group.state = State::making;
  lock.unlock();
  std::shared_ptr<const screen::Batch> batch;
  try {
    batch = points_.batch(group.middle);
  } catch (...) {  // the others must not wait for ever
    lock.lock();
    group.state = State::ready;
    group.left.clear();
    made_.notify_all();
    throw;
  }
  lock.lock();
  group.batch = std::move(batch);
  group.state = State::ready;
  made_.notify_all();
}

std::optional<Batches::Task> Batches::next(const std::atomic<bool>& stop) {
  std::unique_lock lock(guard_);
  while (!stop) {
    if (Group* group = find(State::ready)) {
      Task task{group->left.front(), group->batch};
      group->left.pop_front();
      if (group->left.empty()) group->batch.reset();
      return task;
    }
    if (Group* group = find(State::untouched)) {
      make(*group, lock);
    } else if (find(State::making) != nullptr) {
      made_.wait(lock);
    } else {
      return std::nullopt;
    }
  }
  return std::nullopt;
}

}  // namespace stillground::sweep
