#include "engine/record/write/background.hpp"

#include <atomic>
#include <stdexcept>
#include <vector>

#include "tests/catch.hpp"

using stillground::record::Background;

TEST_CASE("Jobs are done one after the other, in the order in which they were handed over", "[record]") {
  std::vector<int> done;
  Background background(10);
  for (int i = 0; i < 100; ++i) background.post([&done, i] { done.push_back(i); }, 3);
  background.finish();
  REQUIRE(done.size() == 100);
  for (int i = 0; i < 100; ++i) CHECK(done[static_cast<std::size_t>(i)] == i);
}

TEST_CASE("No more waits than the limit, but a job larger than it is taken when nothing else waits", "[record]") {
  std::atomic<int> held{0}, most{0};
  Background background(100);
  for (int i = 0; i < 50; ++i) {
    const int bytes = i % 10 == 0 ? 150 : 40;
    // Counted from when the job is taken to its end.
    background.post([&held, bytes] { held -= bytes; }, static_cast<std::size_t>(bytes));
    held += bytes;
    most = std::max(most.load(), held.load());
  }
  background.finish();
  CHECK(held == 0);
  CHECK(most <= 150);
}

TEST_CASE("What a job throws comes back to whoever hands over the next, and the rest is dropped", "[record]") {
  int later = 0;
  Background background(1);  // a job at a time
  background.post([] { throw std::runtime_error("the disk is full"); }, 1);
  CHECK_THROWS_WITH(background.post([&] { ++later; }, 1), "the disk is full");
  CHECK_THROWS_WITH(background.finish(), "the disk is full");
  CHECK(later == 0);
}
