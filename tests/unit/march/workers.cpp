#include "engine/march/workers.hpp"

#include <catch2/catch.hpp>
#include <stdexcept>
#include <string>
#include <vector>

using stillground::march::Workers;

TEST_CASE("Every task is done once in each of many short rounds") {
  for (const int threads : {1, 2, 5}) {
    Workers workers(threads);
    std::vector<long> done(9);  // each task its own slot, no lock
    constexpr long rounds = 20000;
    for (long round = 0; round < rounds; ++round) workers.each(done.size(), [&](std::size_t i) { ++done[i]; });
    CHECK(done == std::vector<long>(9, rounds));
  }
}

TEST_CASE("A round with fewer tasks than threads ends") {
  Workers workers(4);
  std::vector<int> done(2);
  for (int round = 0; round < 1000; ++round) workers.each(done.size(), [&](std::size_t i) { ++done[i]; });
  CHECK(done == std::vector<int>(2, 1000));
}

TEST_CASE(
    "What the lowest failing task threw comes out, after all others are done, and the next round is whole again") {
  Workers workers(3);
  std::vector<int> done(12);
  const auto task = [&](std::size_t i) {
    ++done[i];
    if (i == 4 || i == 9) throw std::runtime_error(std::to_string(i));
  };
  CHECK_THROWS_WITH(workers.each(done.size(), task), "4");
  CHECK(done == std::vector<int>(12, 1));
  CHECK_NOTHROW(workers.each(done.size(), [&](std::size_t i) { ++done[i]; }));
  CHECK(done == std::vector<int>(12, 2));
}

TEST_CASE("What one phase did is seen by all in the next, and in between by the one who sums it up") {
  for (const int threads : {1, 2, 4}) {
    Workers workers(threads);
    constexpr std::size_t tasks = 10, phases = 3000;
    std::vector<std::size_t> ours(tasks), seen(tasks);
    std::size_t sum = 0, wrong = 0;
    workers.in_phases(
        phases, tasks,
        [&](std::size_t phase, std::size_t i) {
          if (sum != phase * tasks) ++seen[i];
          ours[i] = phase + 1;
        },
        [&](std::size_t phase) {
          sum = 0;
          for (const std::size_t one : ours) sum += one;
          if (sum != (phase + 1) * tasks) ++wrong;
        });
    CHECK(wrong == 0);
    CHECK(seen == std::vector<std::size_t>(tasks, 0));
    CHECK(sum == phases * tasks);
  }
}

TEST_CASE("After a failure no further phase begins, whether a task failed or what stands between") {
  for (const int threads : {1, 3}) {
    Workers workers(threads);
    std::size_t last = 0;
    const auto note = [&](std::size_t phase, std::size_t i) {
      if (i == 0) last = phase;
    };
    CHECK_THROWS_WITH(workers.in_phases(9, 6, note,
                                        [](std::size_t phase) {
                                          if (phase == 4) throw std::runtime_error("between");
                                        }),
                      "between");
    CHECK(last == 4);
    const auto fail = [&](std::size_t phase, std::size_t i) {
      note(phase, i);
      if (phase == 2 && i == 5) throw std::runtime_error("task");
    };
    CHECK_THROWS_WITH(workers.in_phases(9, 6, fail, [](std::size_t) {}), "task");
    CHECK(last == 2);
  }
}
