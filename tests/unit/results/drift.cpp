#include "tools/results/drift.hpp"

#include <cmath>

#include "engine/base/calendar.hpp"
#include "engine/base/errors.hpp"
#include "tests/catch.hpp"
#include "tests/unit/results/made_result.hpp"
#include "tools/results/drift_view.hpp"

using namespace stillground;
using namespace stillground::results;
using stillground::testing::Contains;

namespace {

YearlyGround rising(int years, double per_year, double end) {
  YearlyGround yearly;
  for (int y = 1; y <= years; ++y) {
    yearly.block_rise.push_back(per_year * y);
    yearly.undisturbed.push_back(285.15);
  }
  yearly.final_block = end;
  yearly.final_middle = std::nan("");
  return yearly;
}

}  // namespace

TEST_CASE("Means over a run-year of a straight rise are its middle values") {
  std::vector<double> times;
  std::vector<double> values;
  for (int month = 0; month <= 24; ++month) {
    times.push_back(seconds_per_year * month / 12);
    values.push_back(2.0 * month / 12);
  }
  const std::vector<double> means = yearly_means(times, values, 2);
  CHECK(means[0] == Approx(1));
  CHECK(means[1] == Approx(3));
}

TEST_CASE("A run-year that was not recorded to its end has no mean") {
  CHECK(std::isnan(yearly_means({0, seconds_per_year / 2}, {1, 1}, 1)[0]));
}

TEST_CASE("A verdict tells the direction, the speed, the share and the end") {
  const std::string warming = verdict(assess(rising(20, 0.1, 4)));
  CHECK_THAT(warming, Contains("warms by 1.00 K per decade") && Contains("does not level off within the 20 years"));
  CHECK_THAT(warming, Contains("stands 2.00 K above") && Contains("50 % of the 4.00 K of warming"));
  CHECK_THAT(verdict(assess(rising(20, -0.1, -8))), Contains("cools by 1.00 K per decade") &&
                                                        Contains("2.00 K below") &&
                                                        Contains("25 % of the 8.00 K of cooling"));
}

TEST_CASE("A verdict tells from when on the ground is level") {
  YearlyGround yearly = rising(25, 0, 2);
  for (std::size_t y = 0; y < 25; ++y) yearly.block_rise[y] = y < 2 ? 1.0 : 2.0;
  const Drift drift = assess(yearly);
  REQUIRE(drift.level_from);
  CHECK(*drift.level_from == 12);  // from year 12 on the ten years hold no step
  CHECK_THAT(verdict(drift), Contains("level from run-year 12 on") && Contains("100 %"));
}

TEST_CASE("One run-year has a rise but no trend") {
  const Drift drift = assess(rising(1, 0.5, 5));
  CHECK(std::isnan(drift.trend));
  CHECK_THAT(verdict(drift), Contains("One run-year shows no trend") && Contains("10 % of the 5.00 K"));
}

TEST_CASE("A balanced year's heat leads nowhere, so there is no share of it") {
  const Drift drift = assess(rising(12, 0.001, 0.01));
  CHECK(std::isnan(drift.share));
  CHECK_THAT(verdict(drift), !Contains("%") && Contains("leave it where it was"));
}

TEST_CASE("Ground that stands on the other side of where it is heading has no share") {
  CHECK_THAT(verdict(assess(rising(12, -0.1, 3))), Contains("against the 3.00 K of warming") && !Contains("%"));
}

TEST_CASE("Climate at the surface is told apart from the field's own drift") {
  YearlyGround yearly = rising(12, 0, 2);
  for (std::size_t y = 0; y < 12; ++y) yearly.undisturbed[y] += 0.02 * static_cast<double>(y);
  const Drift drift = assess(yearly);
  CHECK(drift.trend == Approx(0).margin(1e-12));
  CHECK(drift.undisturbed_trend == Approx(0.2));
}

TEST_CASE("Bores of mixed depth stand in a block from the highest top to the lowest toe") {
  const Block block = block_of({{0, 0, 2, 80, 0.07, 0, 0}, {6, 0, 1.5, 100, 0.07, 0, 0}});
  CHECK(block.top == 1.5);
  CHECK(block.toe == 101.5);
}

// Two bores whose own rise is 0.25 K a year everywhere: the block has twice that; a run-year's mean is its middle's.
TEST_CASE("Drift is read from a result file by superposition") {
  const record::read::Result result =
      stillground::testing::made_result({3, "monthly", [](double t) { return 0.25 * t; }, 3, {}});
  const Drift drift = drift_of(result);
  for (std::size_t y = 0; y < 3; ++y) {
    CHECK(drift.yearly.block_rise[y] ==
          Approx(0.5 * (static_cast<double>(y) + 0.5)).epsilon(1e-5));  // quadrature, 32 bits
    CHECK(drift.yearly.middle_rise[y] == Approx(0.5 * (static_cast<double>(y) + 0.5)).epsilon(1e-6));
    CHECK(drift.yearly.undisturbed[y] == Approx(285.15));
  }
  CHECK(drift.trend == Approx(5).epsilon(1e-5));
  CHECK(drift.yearly.final_block == Approx(6).epsilon(1e-5));
  CHECK(drift.share == Approx(1.25 / 6).epsilon(1e-5));
}

TEST_CASE("Without recorded ground temperatures the drift says that it cannot be told") {
  const record::read::Result result = stillground::testing::made_result({1, "none", [](double) { return 0.0; }, 0, {}});
  CHECK_THROWS_AS(drift_of(result), InputError);
  CHECK_THROWS_WITH(drift_of(result), Contains("made.h5: record.fields") && Contains("monthly or yearly"));
}

TEST_CASE("A long run's table shows every fifth year, its JSON all of them") {
  const Drift drift = assess(rising(40, 0.1, 9));
  const Source source{"long.h5", "long", {2027, 1, 1}, 40, "march"};
  const Block block = block_of({{0, 0, 2, 80, 0.07, 0, 0}});
  CHECK_THAT(drift_text(source, block, drift), Contains("\n      35  2061-01-01") && !Contains("2062-01-01"));
  const present::Json object = drift_json(source, block, drift);
  CHECK(object["yearly"]["block_rise"]["values"].size() == 40);
  CHECK(object["trend"] == present::Json({{"value", 1.0}, {"units", "K/decade"}}));
  CHECK(object["midpoint_trend"]["value"].is_null());
  CHECK(object["level_from"].is_null());
}
