#include <catch2/catch.hpp>

#include "tests/unit/config/edited.hpp"

using namespace stillground;
using Catch::Matchers::Contains;
using testing::grid;

namespace {

model::Scenario with_positions(const std::string& rows, const std::string& years = "3") {
  return testing::read_edited(
      {"site " + grid + " => positions: bores.csv", "site years: 1 => years: " + years, "file bores.csv = " + rows});
}

std::vector<model::BoreSite> sites(const std::string& rows) {
  return std::get<model::Positions>(with_positions(rows).layout).sites;
}

}  // namespace

TEST_CASE("Surveyed positions take depth, top and start from the bore where a row has none", "[config]") {
  const auto found = sites("# surveyed\\nx [ft],y [m],depth [m],top [m],start\\n10,0,,,\\n40,6,90,1.2,2028-07-01\\n");
  REQUIRE(found.size() == 2);
  CHECK(found[0].x == Approx(3.048).epsilon(1e-14));
  CHECK(found[0].depth == 120);
  CHECK(found[0].top == 1.8);
  CHECK(found[0].start == 0);
  CHECK(found[1].y == 6);
  CHECK(found[1].depth == 90);
  CHECK(found[1].top == 1.2);
  CHECK(found[1].start == 365 * 86400.0);
}

TEST_CASE("A start with a unit is a time after the run's start", "[config]") {
  CHECK(sites("x [m],y [m],start [year]\\n0,0,0\\n6,0,1.5\\n")[1].start == 1.5 * 365 * 86400);
}

TEST_CASE("Starts outside the run are refused", "[config]") {
  CHECK_THROWS_WITH(sites("x [m],y [m],start\\n0,0,\\n6,0,2030-07-01\\n"),
                    Contains("bores.csv:3:5: start: \"2030-07-01\" is after the run's end"));
  CHECK_THROWS_WITH(sites("x [m],y [m],start\\n0,0,2028-01-01\\n"),
                    Contains("no bore of") && Contains("works at the run's start"));
  CHECK_THROWS_WITH(sites("x [m],y [m],start\\n0,0,\\n6,0,soon\\n"),
                    Contains("bores.csv:3:5: start: \"soon\": not a date"));
  CHECK_THROWS_WITH(sites("x [m],y [m],start [h]\\n0,0,\\n6,0,1.5\\n"),
                    Contains("\"1.5\" is not a whole number of hours"));
}

TEST_CASE("Bores that overlap are found wherever they stand in the file", "[config]") {
  CHECK_THROWS_WITH(sites("x [m],y [m]\\n0,0\\n50,50\\n6,0\\n50.1,50\\n"),
                    Contains("bores.csv:5: field.positions: the bore stands 0.1 m from the one in line 3, less than "
                             "its diameter of 0.15 m"));
  const model::Scenario near = with_positions("x [m],y [m]\\n0,0\\n50,50\\n6,0\\n48,50\\n");
  REQUIRE(near.warnings.size() == 1);
  CHECK_THAT(near.warnings[0].line(), Contains("bores.csv:5: this bore and the one in line 3 stand 2.00 m apart"));
}

TEST_CASE("A column of positions that nobody knows is refused", "[config]") {
  CHECK_THROWS_WITH(sites("x [m],y [m],deep [m]\\n0,0,90\\n"), Contains("bores.csv:1:13: unknown column \"deep\""));
  CHECK_THROWS_WITH(sites("x [m]\\n0\\n"), Contains("has no column \"y\""));
}

TEST_CASE("Coordinates of a map are refused, local ones wanted", "[config]") {
  CHECK_THROWS_WITH(sites("x [m],y [m]\\n0,5400000\\n"), Contains("bores.csv:2:3: y: \"5400000\" is out of range"));
}
