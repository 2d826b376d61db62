
#include "tests/catch.hpp"
#include "tests/unit/config/edited.hpp"

using namespace stillground;
using stillground::testing::Contains;
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

// The northing is that of a town in the middle of Germany in UTM (common practice, no source).
TEST_CASE("Coordinates of a national grid are read to their last digit", "[config]") {
  const auto found = sites("x [m],y [m]\\n32456789.123,5634505.25\\n32456795.123,5634505.251\\n");
  CHECK(found[0].x == 32456789.123);
  CHECK(found[1].y == 5634505.251);
}

TEST_CASE("A row that was measured from another origin is refused", "[config]") {
  CHECK_THROWS_WITH(sites("x [m],y [m]\\n6,0\\n0,5634505\\n"),
                    Contains("bores.csv:3:1: x: this point lies 5635 km from the one in line 2 (allowed: up to 10 km); "
                             "are both measured from one origin?"));
  CHECK_THROWS_WITH(sites("x [m],y [m]\\n0,5e9\\n"), Contains("bores.csv:2:3: y: \"5e9\" is out of range"));
}

TEST_CASE("A date may have its hour", "[config]") {
  const auto found = sites("x [m],y [m],start,stop\\n0,0,,\\n6,0,2027-07-02 13:00,2028-07-01T06:00\\n");
  CHECK(found[1].start == 37 * 3600);
  CHECK(found[1].stop == (365 * 24 + 6) * 3600);
  CHECK_THROWS_WITH(sites("x [m],y [m],start\\n0,0,\\n6,0,2027-07-02 13:30\\n"),
                    Contains("\"2027-07-02 13:30\" is not a whole number of hours"));
  CHECK_THROWS_WITH(sites("x [m],y [m],start\\n0,0,\\n6,0,2027-07-02 25:00\\n"), Contains("a day ends at 24:00"));
}

TEST_CASE("A date under a head with a unit is refused, with what to do about the head", "[config]") {
  CHECK_THROWS_WITH(sites("x [m],y [m],start [hour]\\n0,0,\\n6,0,2028-07-01\\n"),
                    Contains("\"2028-07-01\": dates stand in a column without a unit in its head"));
}

TEST_CASE("Bores are numbered in the order of the rows, whatever a column of numbers says", "[config]") {
  CHECK(with_positions("number,x [m],y [m]\\n1,0,0\\n2,6,0\\n").warnings.empty());
  const model::Scenario other = with_positions("number,x [m],y [m]\\n1,0,0\\n3,6,0\\n4,12,0\\n");
  REQUIRE(other.warnings.size() == 1);
  CHECK_THAT(other.warnings[0].line(),
             Contains("bores.csv:3:1: number \"3\" is not read") && Contains("this one is 2"));
}

TEST_CASE("A plot beside positions is the land they stand on, and does not say how it is filled", "[config]") {
  const auto on_land = [](const std::string& keys) {
    return testing::read_edited(
        {"site " + grid + " => positions: bores.csv\\n  plot: {outline: plot.csv, setback: 3 m" + keys + "}",
         "file bores.csv = x [m],y [m]\\n5,5\\n15,5\\n", "file plot.csv = x [m],y [m]\\n0,0\\n20,0\\n20,10\\n0,10\\n"});
  };
  const model::Scenario scenario = on_land(", keep_clear: [{outline: plot.csv}]");
  CHECK(std::get<model::Positions>(scenario.layout).sites.size() == 2);
  const model::Land* land = model::land_of(scenario.layout);
  REQUIRE(land != nullptr);
  CHECK(land->outline.size() == 4);
  CHECK(land->setback == 3);
  CHECK(land->keep_clear.size() == 1);
  for (const char* key : {"spacing: 6 m", "pattern: square", "angle: 4"}) {
    CHECK_THROWS_WITH(on_land(std::string(", ") + key), Contains("has no use beside field.positions"));
  }
}

TEST_CASE("Bores that overlap are refused in the reader's units", "[config]") {
  CHECK_THROWS_WITH(
      testing::read_edited({"site " + grid + " => positions: bores.csv", "site bore:\\n => units: us\\nbore:\\n",
                            "file bores.csv = x [ft],y [ft]\\n0,0\\n0.3,0\\n"}),
      Contains("the bore stands 0.3 ft from the one in line 2, less than its diameter of 0.492 ft"));
}
