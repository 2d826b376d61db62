#include "tools/results/limits.hpp"

#include <cmath>

#include "tests/catch.hpp"
#include "tests/unit/results/made_hours.hpp"
#include "tools/results/limit_view.hpp"

using namespace stillground;
using namespace stillground::results;
using stillground::testing::made_hours;

namespace {

const Date start{2027, 7, 1};

record::LimitRow limit(const std::string& quantity, bool is_least, double celsius, const std::string& over = "hour") {
  return {quantity + (is_least ? "_min" : "_max"), quantity, is_least, over, 273.15 + celsius};
}

}  // namespace

TEST_CASE("A limit on minutes is judged by each run-year's farthest minute") {
  const auto hours = made_hours(3 * 8760, [](std::size_t) { return 4.0; });
  const std::vector<record::MinuteExtremes> minutes = {{273.15 + 1, 273.15 + 20, 5000, 300},
                                                       {273.15 - 1.5, 273.15 + 20, 8760 + 5000, 8760 + 300},
                                                       {273.15 - 2.5, 273.15 + 21, 2 * 8760 + 5000, 2 * 8760 + 300}};
  const LimitOutcome outcome = judge(limit("eft", true, -1, "minute"), hours, start, minutes);
  CHECK(outcome.judged == 3);
  CHECK(outcome.beyond_by_year == std::vector<long>{0, 1, 1});
  CHECK(outcome.first_beyond == 8760 + 5000);
  CHECK(outcome.closest - 273.15 == Approx(-2.5));
  CHECK(counted_in(outcome) == "years");
  CHECK(minute_years_beyond({outcome}) == 2);
  CHECK(judge(limit("eft", false, 21.5, "minute"), hours, start, minutes).kept());
  CHECK_FALSE(judge(limit("eft", false, 20.5, "minute"), hours, start, minutes).kept());
}

TEST_CASE("Where minutes were not estimated a limit on them is not judged") {
  const auto hours = made_hours(8760, [](std::size_t) { return -4.0; });
  const LimitOutcome outcome = judge(limit("eft", true, -1, "minute"), hours, start);
  CHECK(outcome.judged == 0);
  CHECK(first_beyond_text(outcome, start) == "not judged");
}

TEST_CASE("The first hour beyond a limit is found to the hour and the run-year") {
  const auto hours = made_hours(2 * 8760, [](std::size_t h) { return h >= 8760 + 31 * 24 + 13 ? -2.5 : 4.0; });
  const LimitOutcome outcome = judge(limit("eft", true, -2), hours, start);
  REQUIRE(outcome.first_beyond);
  CHECK(first_beyond_text(outcome, start) == "2028-08-01 13:00-14:00");
  CHECK(outcome.beyond_by_year == std::vector<long>{0, 8760 - 31 * 24 - 13});
  CHECK(outcome.beyond == 8760 - 31 * 24 - 13);
  CHECK(outcome.closest - 273.15 == Approx(-2.5));
}

TEST_CASE("Standing exactly on a limit keeps it") {
  const auto hours = made_hours(48, [](std::size_t) { return 32.0; });
  CHECK(judge(limit("eft", false, 32), hours, start).kept());
  CHECK_FALSE(judge(limit("eft", false, 31.999), hours, start).kept());
}

TEST_CASE("Standing fluid breaks no limit") {
  auto hours = made_hours(48, [](std::size_t h) { return h == 7 ? -30.0 : 5.0; });
  CHECK_FALSE(judge(limit("eft", true, -2), hours, start).kept());
  hours[7].flow = 0;
  const LimitOutcome outcome = judge(limit("eft", true, -2), hours, start);
  CHECK(outcome.kept());
  CHECK(outcome.judged == 47);
}

TEST_CASE("The nearest value of each run-year and the margin to the limit are kept") {
  const auto hours = made_hours(2 * 8760, [](std::size_t h) { return h < 8760 ? 30.0 : h == 9000 ? 34.0 : 31.0; });
  const LimitOutcome outcome = judge(limit("eft", false, 32), hours, start);
  REQUIRE(outcome.closest_by_year.size() == 2);
  CHECK(outcome.closest_by_year[0] - 273.15 == Approx(30));
  CHECK(outcome.closest_by_year[1] - 273.15 == Approx(34));
  CHECK(outcome.margin() == Approx(-2));
  CHECK(judge(limit("eft", true, 25), hours, start).margin() == Approx(5));
}

TEST_CASE("Of several broken limits the one that was left first is found") {
  const auto hours = made_hours(48, [](std::size_t h) { return h < 10 ? 5.0 : h < 20 ? 12.0 : 30.0; });
  const std::vector<LimitOutcome> outcomes = {judge(limit("eft", false, 20), hours, start),
                                              judge(limit("lft", false, 13), hours, start),
                                              judge(limit("eft", true, 0), hours, start)};
  REQUIRE(first_broken(outcomes) != nullptr);
  CHECK(first_broken(outcomes)->limit.name == "lft_max");
  CHECK(first_broken({outcomes[2]}) == nullptr);
}

TEST_CASE("An hour beyond two limits is one hour beyond") {
  record::Header header;
  header.start = start;
  header.limits = {limit("eft", true, 0), limit("lft", true, 1), limit("eft", true, 4, "month")};
  const auto hours = made_hours(8760, [](std::size_t h) { return h < 3 ? -2.0 : h < 5 ? -0.5 : 5.0; });
  CHECK(periods_beyond(header, hours, false) == 5);
  CHECK(periods_beyond(header, hours, true) == 0);
  header.limits.push_back(limit("lft", true, 8, "month"));
  CHECK(periods_beyond(header, hours, true) == 12);
}

TEST_CASE("LFT and mean fluid are judged by their own temperatures") {
  const auto hours = made_hours(48, [](std::size_t) { return 30.0; });  // LFT 32, mean 31
  CHECK(judge(limit("eft", false, 30.5), hours, start).kept());
  CHECK_FALSE(judge(limit("mean_fluid", false, 30.5), hours, start).kept());
  CHECK(judge(limit("mean_fluid", false, 31.5), hours, start).kept());
  CHECK_FALSE(judge(limit("lft", false, 31.5), hours, start).kept());
}

TEST_CASE("A limit on monthly means forgives an hour but not a month") {
  const auto cold_hour = made_hours(8760, [](std::size_t h) { return h == 100 ? -20.0 : 5.0; });
  CHECK(judge(limit("eft", true, -1, "month"), cold_hour, start).kept());
  const std::size_t january = 184 * 24;  // July to December
  const auto cold_month =
      made_hours(8760, [&](std::size_t h) { return h >= january && h < january + 31 * 24 ? -1.5 : 5.0; });
  const LimitOutcome outcome = judge(limit("eft", true, -1, "month"), cold_month, start);
  CHECK(outcome.judged == 12);
  CHECK(outcome.beyond == 1);
  CHECK(first_beyond_text(outcome, start) == "2028-01");
}

TEST_CASE("A month that the run's start cuts is not judged") {
  const Date late{2027, 7, 29};
  const auto hours = made_hours(8760, [](std::size_t h) { return h < 3 * 24 ? -9.0 : 5.0; });
  const LimitOutcome outcome = judge(limit("eft", true, -1, "month"), hours, late);
  CHECK(outcome.kept());
  CHECK(outcome.judged == 11);
}

TEST_CASE("A limit that could never be judged is neither kept nor broken") {
  auto hours = made_hours(8760, [](std::size_t) { return -30.0; });
  for (auto& hour : hours) hour.flow = 0;
  const LimitOutcome outcome = judge(limit("eft", true, -2), hours, start);
  CHECK(outcome.judged == 0);
  CHECK(first_beyond_text(outcome, start) == "not judged");
  CHECK(limit_json({outcome}, start)[0]["kept"].is_null());
}

TEST_CASE("A limit near the curves widens the axis, a far one does not flatten them") {
  const auto hours = made_hours(24, [](std::size_t) { return 5.0; });
  present::Range range;
  range.add(0);
  range.add(20);
  const auto levels =
      limit_levels({judge(limit("eft", true, -2), hours, start), judge(limit("eft", false, 45), hours, start),
                    judge(limit("lft", false, 21), hours, start)},
                   Quantity::eft, {}, range);
  CHECK(levels.size() == 2);  // the LFT's limit belongs to its own curves
  CHECK(range.low() == Approx(-2));
  CHECK(range.high() == 20);
}
