#include "engine/march/workers.hpp"

#include <stdexcept>
#include <string>
#include <vector>

#include "tests/catch.hpp"

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

TEST_CASE("Threads that work together see what the others did before they met") {
  for (const int threads : {1, 2, 4}) {
    Workers workers(threads);
    constexpr std::size_t tasks = 10;
    constexpr long rounds = 2000;
    std::vector<long> ours(tasks), seen(static_cast<std::size_t>(threads));
    workers.as_team([&](Workers::Team& team) {
      const Workers::Part own = workers.part(tasks, team.index());
      for (long round = 1; round <= rounds; ++round) {
        for (std::size_t i = own.from; i < own.end; ++i) ours[i] = round;
        team.barrier();
        for (const long one : ours) seen[team.index()] += one;
        team.barrier();
      }
    });
    const long sum = static_cast<long>(tasks) * rounds * (rounds + 1) / 2;
    CHECK(seen == std::vector<long>(static_cast<std::size_t>(threads), sum));
  }
}

TEST_CASE("When all fail between the same two meetings, the failure comes out and the next meeting is whole") {
  Workers workers(3);
  const auto fail = [](Workers::Team& team) {
    team.barrier();
    throw std::runtime_error("all of us");
  };
  CHECK_THROWS_WITH(workers.as_team(fail), "all of us");
  std::vector<int> met(3);
  workers.as_team([&](Workers::Team& team) {
    team.barrier();
    met[team.index()] = 1;
  });
  CHECK(met == std::vector<int>(3, 1));
}
