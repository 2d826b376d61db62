#include <algorithm>
#include <cmath>

#include "engine/transit/hour_march.hpp"
#include "engine/transit/minute_extremes.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

namespace {

struct Year {
  assembly::Assembly assembly;
  std::vector<record::Hour> hours;
};

Year year(const model::Scenario& scenario) {
  return {assembly::assemble(scenario), test::march(scenario, hours_per_year)};
}

}  // namespace

TEST_CASE("No hour marched by itself goes farther than the year's minutes", "[transit]") {
  const Year run = year(test::scenario(2, 2));
  const auto found = transit::minute_extremes(run.assembly, run.hours).at(0);
  double least = 1e9, most = 0;
  for (const auto& hour : run.hours) {
    if (hour.flow > 0) least = std::min(least, hour.eft), most = std::max(most, hour.eft);
  }
  CHECK(found.eft_least <= least);
  CHECK(found.eft_most >= most);
  transit::HourMarch march(run.assembly, run.hours);
  long looked_at = 0;
  double farther = 0;
  for (long h = 0; h < hours_per_year; ++h) {
    const auto& hour = run.hours[static_cast<std::size_t>(h)];
    // No hour's minutes depart from its mean by more than this here: the others cannot count.
    constexpr double farthest_departure = 1.5;
    if (hour.flow <= 0) continue;
    if (hour.eft > found.eft_least + farthest_departure && hour.eft < found.eft_most - farthest_departure) continue;
    ++looked_at;
    const auto course = march.courses(h).front();
    farther = std::max(farther, found.eft_least - *std::min_element(course.begin(), course.end()));
    farther = std::max(farther, *std::max_element(course.begin(), course.end()) - found.eft_most);
  }
  CHECK(looked_at > 10);
  CHECK(farther <= 0.05);  // [K]; hours are told apart by their load, the legs' contents vary besides
}

TEST_CASE("A year in which no fluid flows has no minutes", "[transit]") {
  model::Scenario s = test::scenario(1, 1);
  s.loads = model::ConstantGroundLoad{0};
  s.heat_pump.reset();
  const Year run = year(s);
  const auto found = transit::minute_extremes(run.assembly, run.hours).at(0);
  CHECK(std::isnan(found.eft_least));
  CHECK(found.hour_least == -1);
  CHECK(found.hour_most == -1);
}

TEST_CASE("Under a steady load with steady flow a minute is the hour", "[transit]") {
  model::Scenario s = test::scenario(1, 1);
  s.loads = model::ConstantGroundLoad{-2000};
  s.heat_pump.reset();
  s.flow.runs = model::Flow::Runs::always;
  const Year run = year(s);
  transit::HourMarch march(run.assembly, run.hours);
  for (const long hour : {200L, 5000L}) {
    const auto course = march.courses(hour).front();
    double worst = 0;
    for (const double eft : course)
      worst = std::max(worst, std::abs(eft - run.hours[static_cast<std::size_t>(hour)].eft));
    CHECK(worst <= 0.02);  // [K]; the circuit is shifted to the run's EFT hour by hour, and cools a little in between
  }
}
