#include "engine/base/calendar.hpp"

#include "tests/catch.hpp"

using namespace stillground;
using stillground::testing::Contains;

TEST_CASE("A year has 365 days and twelve months", "[base]") {
  int days = 0;
  for (const int month : days_of_month) days += month;
  CHECK(days == days_per_year);
  CHECK(hours_per_year == 24 * days_per_year);
  CHECK(seconds_per_year == seconds_per_hour * hours_per_year);
}

TEST_CASE("Days and hours of the year count from 1 January 00:00", "[base]") {
  CHECK(day_of_year({2027, 1, 1}) == 0);
  CHECK(day_of_year({2027, 3, 1}) == 59);
  CHECK(day_of_year({2028, 3, 1}) == 59);  // no leap day in this calendar
  CHECK(day_of_year({2027, 12, 31}) == 364);
  CHECK(hour_of_year({2027, 7, 1}) == 24 * 181);
}

TEST_CASE("Adding days and counting days undo each other", "[base]") {
  const Date start{2027, 7, 1};
  for (const long days : {-800L, -365L, -182L, -1L, 0L, 1L, 183L, 184L, 365L, 9125L}) {
    CAPTURE(days);
    CHECK(days_between(start, plus_days(start, days)) == days);
  }
  CHECK(plus_days({2028, 2, 28}, 1) == Date{2028, 3, 1});
  CHECK(plus_days({2027, 1, 1}, -1) == Date{2026, 12, 31});
  CHECK(plus_days({2027, 7, 1}, 25 * 365) == Date{2052, 7, 1});
}

TEST_CASE("Instants are written as ISO dates and hours", "[base]") {
  CHECK(iso({2027, 7, 1}) == "2027-07-01");
  CHECK(iso_hour({2027, 7, 1}, 0) == "2027-07-01 00:00");
  CHECK(iso_hour({2027, 7, 1}, 36.5) == "2027-07-02 12:30");
  CHECK(iso_hour({2027, 7, 1}, -1) == "2027-06-30 23:00");
  CHECK(iso_hour({2027, 12, 31}, 24) == "2028-01-01 00:00");
}

TEST_CASE("A date may stop at its year or month", "[base]") {
  CHECK(parse_date("2027") == Date{2027, 1, 1});
  CHECK(parse_date("2027-07") == Date{2027, 7, 1});
  CHECK(parse_date("2027-7-9") == Date{2027, 7, 9});
}

TEST_CASE("What is not a date of this calendar is refused in words", "[base]") {
  CHECK_THROWS_WITH(parse_date("July 2027"), Contains("not a date"));
  CHECK_THROWS_WITH(parse_date("2027-07-01x"), Contains("not a date"));
  CHECK_THROWS_WITH(parse_date(""), Contains("not a date"));
  CHECK_THROWS_WITH(parse_date("2027-13"), Contains("month 13 does not exist"));
  CHECK_THROWS_WITH(parse_date("2027-00"), Contains("month 0 does not exist"));
  CHECK_THROWS_WITH(parse_date("2028-02-29"), Contains("29 February"));
  CHECK_THROWS_WITH(parse_date("2027-04-31"), Contains("Apr 31 does not exist"));
  CHECK_THROWS_WITH(parse_date("2027-04-00"), Contains("Apr 0 does not exist"));
}
