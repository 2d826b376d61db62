#include "engine/base/hour_span.hpp"

#include "tests/catch.hpp"

using namespace stillground;

TEST_CASE("An hour is named by both its ends, the day's last by midnight as its 24th") {
  CHECK(hour_span({2027, 7, 1}, 0) == "2027-07-01 00:00-01:00");
  CHECK(hour_span({2027, 12, 31}, 23) == "2027-12-31 23:00-24:00");
  CHECK(hour_span({2027, 12, 31}, 24) == "2028-01-01 00:00-01:00");
}
