#include "tools/results/months.hpp"

#include "tests/catch.hpp"

using namespace stillground;
using namespace stillground::results;

TEST_CASE("A run-year that starts with a month has twelve whole ones, February of 28 days") {
  const std::vector<MonthSpan> months = months_between({2027, 7, 1}, 0, 8760);
  REQUIRE(months.size() == 12);
  CHECK(months.front().month == 7);
  CHECK(months.front().last == 31 * 24);
  CHECK(months[6].year == 2028);
  CHECK(months[6].month == 1);
  CHECK(months[7].last - months[7].first == 28 * 24);
  CHECK(months.back().last == 8760);
  for (const MonthSpan& month : months) CHECK(month.whole);
}

TEST_CASE("A run-year that starts within a month has that month at both ends, cut") {
  const std::vector<MonthSpan> months = months_between({2027, 7, 11}, 0, 8760);
  REQUIRE(months.size() == 13);
  CHECK(months.front().last == 21 * 24);
  CHECK_FALSE(months.front().whole);
  CHECK(months.back().month == 7);
  CHECK(months.back().last - months.back().first == 10 * 24);
  CHECK_FALSE(months.back().whole);
  CHECK(months[1].whole);
}

TEST_CASE("Months of a later run-year follow on without a gap") {
  const std::vector<MonthSpan> months = months_between({2027, 12, 1}, 8760, 2 * 8760);
  CHECK(months.front().first == 8760);
  CHECK(months.front().year == 2028);
  for (std::size_t m = 1; m < months.size(); ++m) CHECK(months[m].first == months[m - 1].last);
}

TEST_CASE("Run-year n is hours 8760 (n - 1) to 8760 n") {
  CHECK(run_year_of(8759) == 1);
  CHECK(run_year_of(8760) == 2);
  CHECK(first_hour_of(25) == 24 * 8760);
  CHECK(first_day_of({2027, 7, 1}, 25) == Date{2051, 7, 1});
}

TEST_CASE("A summary names the first, fifth, tenth and last run-year that exist, once each") {
  CHECK(named_years(1) == std::vector<int>{1});
  CHECK(named_years(4) == std::vector<int>{1, 4});
  CHECK(named_years(5) == std::vector<int>{1, 5});
  CHECK(named_years(10) == std::vector<int>{1, 5, 10});
  CHECK(named_years(25) == std::vector<int>{1, 5, 10, 25});
}
