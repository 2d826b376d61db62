#include "tools/sweep/night.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "tools/sweep/batches.hpp"
#include "tools/sweep/crew.hpp"

namespace stillground::sweep {

namespace {

/// A stop by a signal, or by what another thread has thrown.
class Stop {
 public:
  explicit Stop(const Hands& hands) : signal_(hands.listen ? &hands.listen() : nullptr) {}

  std::atomic<bool>& flag() { return flag_; }
  bool asked() {
    if (signal_ != nullptr && signal_->load()) flag_ = true;
    return flag_;
  }
  void throw_if_signalled() const {
    if (signal_ != nullptr && signal_->load()) {
      throw Interrupted("interrupted; what is finished is kept, the same command goes on from there");
    }
  }

 private:
  std::atomic<bool> flag_{false};
  const std::atomic<bool>* signal_;
};

void begin(const Hands& hands, const char* words, std::size_t of) {
  if (hands.display != nullptr) hands.display->begin(words, of);
}

void add(const Hands& hands, double part) {
  if (hands.display != nullptr) hands.display->add(part);
}

void screen_all(const Points& points, const std::vector<std::size_t>& numbers, const Hands& hands) {
  if (numbers.empty()) return;
  Stop stop(hands);
  begin(hands, "screened", numbers.size());
  Batches batches(points, numbers);
  const auto useful = std::min(numbers.size(), static_cast<std::size_t>(threads_of(hands.threads)));
  together(static_cast<int>(useful), stop.flag(), [&] {
    while (!stop.asked()) {
      const auto task = batches.next(stop.flag());
      if (!task) return;
      points.screen(task->number, task->batch.get());
      add(hands, 1);
    }
  });
  stop.throw_if_signalled();
}

void march_all(const Points& points, const std::vector<std::size_t>& numbers, const Hands& hands) {
  Stop stop(hands);
  begin(hands, "marched", numbers.size());
  const int threads = threads_of(hands.threads);
  const int at_once = std::min(threads, static_cast<int>(std::min<std::size_t>(numbers.size(), 1024)));
  for_all(numbers.size(), at_once, stop.flag(), [&](std::size_t i) {
    if (stop.asked()) return;
    double done = 0;
    const auto progress = [&](double part) {
      add(hands, part - done);
      done = part;
    };
    points.march(numbers[i], {threads / at_once, progress, hands.listen});
    add(hands, 1 - done);
  });
  stop.throw_if_signalled();
}

}  // namespace

State work_through(const Points& points, const Hands& hands) {
  Stop stop(hands);
  State state = look_at_all(points, hands.threads, stop.flag());
  stop.throw_if_signalled();
  const std::vector<std::size_t> unscreened = to_screen(points.plan(), state);
  screen_all(points, unscreened, hands);
  read_again(points, unscreened, state);
  for (auto numbers = to_march(points.plan(), state); !numbers.empty(); numbers = to_march(points.plan(), state)) {
    march_all(points, numbers, hands);
    read_again(points, numbers, state);
  }
  return state;
}

void work_on(const Points& points, std::size_t number, const Hands& hands) {
  const Method method = points.plan().method;
  const Identity point = points.look(number);
  if (!point.failed.empty()) return;
  const bool screened_before = method != Method::march && points.folder().read(point.digests.screening).has_value();
  if (method != Method::march && !screened_before) {
    points.screen(number, points.batch(points.walk().middle(number)).get());
  }
  if (method == Method::screening || points.folder().read(point.digests.march)) return;
  const auto march = [&] { points.march(number, {hands.threads, {}, hands.listen}); };
  if (method == Method::march) return march();
  const Record screening = *points.folder().read(point.digests.screening);
  if (screening.unfit || (screening.failed.empty() && !screening.sure)) return march();
  if (!screened_before) return;
  // Whether it is among the best only all the others can tell.
  Stop stop(hands);
  const State state = look_at_all(points, hands.threads, stop.flag());
  if (!to_screen(points.plan(), state).empty()) return;
  const std::vector<std::size_t> best = to_march(points.plan(), state);
  if (std::find(best.begin(), best.end(), number) != best.end()) march();
}

}  // namespace stillground::sweep
