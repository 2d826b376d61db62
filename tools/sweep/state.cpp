#include "tools/sweep/state.hpp"

#include <algorithm>

#include "tools/sweep/crew.hpp"
#include "tools/sweep/ranking.hpp"

namespace stillground::sweep {

namespace {

template <class Wanted>
std::vector<std::size_t> numbers_of(const State& state, Wanted wanted) {
  std::vector<std::size_t> numbers;
  for (std::size_t i = 0; i < state.size(); ++i) {
    if (state[i].point.failed.empty() && !state[i].march && wanted(state[i])) numbers.push_back(i + 1);
  }
  return numbers;
}

void read_records(const Points& points, Standing& standing) {
  if (!standing.point.failed.empty()) return;
  if (points.plan().method != Method::march)
    standing.screening = points.folder().read(standing.point.digests.screening);
  if (points.plan().method != Method::screening) standing.march = points.folder().read(standing.point.digests.march);
}

bool leaves_doubt(const Standing& standing) {
  const auto& screening = standing.screening;
  return screening && (screening->unfit || (screening->failed.empty() && !screening->sure));
}

}  // namespace

State look_at_all(const Points& points, int threads, std::atomic<bool>& stop) {
  State state(points.walk().count());
  for_all(state.size(), threads, stop, [&](std::size_t i) {
    state[i].point = points.look(i + 1);
    read_records(points, state[i]);
  });
  return state;
}

void read_again(const Points& points, const std::vector<std::size_t>& numbers, State& state) {
  for (const std::size_t number : numbers) read_records(points, state[number - 1]);
}

std::vector<std::size_t> to_screen(const Plan& plan, const State& state) {
  return numbers_of(state, [&](const Standing& one) { return plan.method != Method::march && !one.screening; });
}

std::vector<std::size_t> to_march(const Plan& plan, const State& state) {
  if (plan.method == Method::screening) return {};
  if (plan.method == Method::march) return numbers_of(state, [](const Standing&) { return true; });
  const std::vector<std::size_t> in_doubt = numbers_of(state, leaves_doubt);
  if (!in_doubt.empty()) return in_doubt;
  std::vector<std::size_t> best = ranked(plan, state);
  best.resize(std::min(best.size(), plan.best));
  std::erase_if(best, [&](std::size_t number) {
    const Standing& one = state[number - 1];
    return one.march || one.shown() == nullptr || !one.shown()->failed.empty();
  });
  std::sort(best.begin(), best.end());
  return best;
}

}  // namespace stillground::sweep
