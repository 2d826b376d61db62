#include <cmath>
#include <numeric>

#include "engine/base/calendar.hpp"
#include "engine/record/read/result.hpp"
#include "engine/record/read/year_weights.hpp"
#include "tests/catch.hpp"
#include "tests/unit/base/scratch.hpp"
#include "tests/unit/record/made_run.hpp"

using namespace stillground;
using namespace stillground::record;
using namespace stillground::testing;
using read::year_weights;

namespace {

constexpr double day = seconds_per_day;

double weighted(const std::vector<read::SnapshotWeight>& weights, const std::vector<double>& times, auto curve) {
  double sum = 0;
  for (const auto& part : weights) sum += part.weight * curve(times[part.snapshot]);
  return sum;
}

/// Start, the ends of the calendar's months, and the end, of a run of two years from 10 July.
std::vector<double> from_tenth_of_july() {
  std::vector<double> times = {0};
  for (int d = 1; d < 730; ++d) {
    if (plus_days({2027, 7, 10}, d).day == 1) times.push_back(d * day);
  }
  times.push_back(730 * day);
  return times;
}

}  // namespace

TEST_CASE("The weights of a year's mean sum to one and keep to the year", "[record][result]") {
  const auto times = from_tenth_of_july();
  for (const int y : {0, 1}) {
    const auto weights = year_weights(times, y);
    CHECK(weighted(weights, times, [](double) { return 1.0; }) == Approx(1).epsilon(1e-14));
    // No further than the snapshots on either side of the year's ends.
    CHECK(times[weights.front().snapshot] > (365 * y - 31) * day);
    CHECK(times[weights.back().snapshot] < (365 * (y + 1) + 31) * day);
  }
}

TEST_CASE("The mean of a straight line is its value in the year's middle, wherever the year begins",
          "[record][result]") {
  const auto times = from_tenth_of_july();
  for (const int y : {0, 1}) {
    const double mean = weighted(year_weights(times, y), times, [](double t) { return t / day; });
    CHECK(mean == Approx(365 * y + 182.5).epsilon(1e-13));
  }
}

TEST_CASE("A year's mean weighs each month by its length", "[record][result]") {
  // Trapezoid by hand for three snapshots: 31 days from 0 to 1, 334 days from 1 to 0, each with mean 1/2.
  const std::vector<double> times = {0, 31 * day, 365 * day};
  const auto weights = year_weights(times, 0);
  REQUIRE(weights.size() == 3);
  CHECK(weights[0].weight == Approx(31 / 2.0 / 365));
  CHECK(weights[1].weight == Approx(0.5));
  CHECK(weights[2].weight == Approx(334 / 2.0 / 365));
}

TEST_CASE("Snapshots that do not reach over the year give no mean", "[record][result]") {
  CHECK_THROWS_AS(year_weights(std::vector<double>{0, 300 * day}, 0), std::out_of_range);
  CHECK_THROWS_AS(year_weights(std::vector<double>{day, 400 * day}, 0), std::out_of_range);
  CHECK_THROWS_AS(year_weights(std::vector<double>{}, 0), std::out_of_range);
}

TEST_CASE("The mean rise of a recorded year is the trapezoid over its months", "[record][result]") {
  const Scratch scratch;
  const Date start = GENERATE(Date{2027, 7, 1}, Date{2027, 7, 10}, Date{2028, 1, 1});
  MadeRun run = made_run({.start = start});
  // Rises that are straight in time: the rule is then exact, and its answer known without it.
  for (Snapshot& snapshot : run.snapshots) {
    for (std::size_t i = 0; i < snapshot.rise.size(); ++i) {
      snapshot.rise[i] = static_cast<float>(snapshot.time / day * (1 + 0.01 * static_cast<double>(i)));
    }
  }
  write_made(scratch.folder / "a.h5", run);
  const read::Result result(scratch.folder / "a.h5");
  for (const int y : {0, 1}) {
    const auto mean = result.year_mean_rise(y);
    REQUIRE(mean.size() == run.snapshots[0].rise.size());
    for (std::size_t i = 0; i < mean.size(); ++i) {
      const double expected = (365 * y + 182.5) * (1 + 0.01 * static_cast<double>(i));
      CHECK(static_cast<double>(mean[i]) ==
            Approx(expected).epsilon(3e-7));  // 32-bit: 2^-24 on each snapshot and on the mean
    }
  }
}
