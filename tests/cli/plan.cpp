#include <fstream>
#include <nlohmann/json.hpp>

#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground::testing;

namespace {

/// The pair, its bores surveyed: one begins a day late, one is shut off after 300 days, two share unequal flows.
struct SurveyedCase : PairCase {
  SurveyedCase() {
    std::ofstream(folder / "bores.csv") << "name,x [m],y [m],depth [m],start [day],stop [day],flow_weight\n"
                                           "A,0,0,60,,,1\n"
                                           "B,6,0,60,1,,0.8\n"
                                           "\"C, the old one\",0,7.5,45,,300,1\n";
    write_variant("surveyed.yaml", "grid: {rows: 1, columns: 2, spacing: 6 m}", "positions: bores.csv");
  }
};

}  // namespace

TEST_CASE("plan says what a layout comes to and lists its bores") {
  const PairCase pair;
  const Outcome outcome = run({"stillground", "plan", "pair.yaml"}, pair.folder);
  CHECK(outcome.status == 0);
  CHECK_THAT(outcome.out, Contains("2 bores, 6.00 m apart at the nearest, 120 m active, 123 m to drill") &&
                              Contains("2  6.00  0.00  60.00  1.50"));
}

TEST_CASE("plan --csv writes a table that stands for the same bores as another scenario's positions") {
  const SurveyedCase surveyed;
  const Outcome first = run({"stillground", "plan", "surveyed.yaml", "--csv", "listed.csv"}, surveyed.folder);
  REQUIRE(first.status == 0);
  CHECK_THAT(first.out, Contains("3 bores"));
  surveyed.write_variant("again.yaml", "grid: {rows: 1, columns: 2, spacing: 6 m}", "positions: listed.csv");
  const Outcome second = run({"stillground", "plan", "again.yaml", "--csv", "-"}, surveyed.folder);
  REQUIRE(second.status == 0);
  CHECK(second.out == bytes(surveyed.folder / "listed.csv"));
  CHECK_THAT(second.out, Contains("\nnumber,name,x [m],y [m],depth [m],top [m],start,stop,flow_weight\n") &&
                             Contains("\n1,A,0,0,60,1.5,,,1\n") && Contains("\n2,B,6,0,60,1.5,2027-07-02,,0.8\n") &&
                             Contains("\n3,\"C, the old one\",0,7.5,45,1.5,,2028-04-27,1\n"));
}

TEST_CASE("plan tells phases by their dates and draws depths in the reader's units") {
  const SurveyedCase surveyed;
  const Outcome table = run({"stillground", "plan", "surveyed.yaml"}, surveyed.folder);
  CHECK_THAT(table.out, Contains("works from") && Contains("2027-07-02") && Contains("2028-04-27"));
  CHECK_THAT(table.out, !Contains("7200"));
  const Outcome picture =
      run({"stillground", "plan", "surveyed.yaml", "--units", "us", "--plot", "-"}, surveyed.folder);
  CHECK_THAT(picture.out, Contains("147.6 ft<") && Contains(">19.69 ft<") && !Contains("45 m<"));
}

TEST_CASE("plan --csv keeps the millimetres of a national grid") {
  const SurveyedCase surveyed;
  std::ofstream(surveyed.folder / "grid.csv") << "x [m],y [m]\n456789.123,5634505.257\n456795.1235,5634505.2575\n";
  surveyed.write_variant("grid.yaml", "grid: {rows: 1, columns: 2, spacing: 6 m}", "positions: grid.csv");
  const Outcome outcome = run({"stillground", "plan", "grid.yaml", "--csv", "-"}, surveyed.folder);
  REQUIRE(outcome.status == 0);
  CHECK_THAT(outcome.out, Contains("\n1,456789.123,5634505.257,60,1.5\n2,456795.1235,5634505.2575,60,1.5\n"));
}

TEST_CASE("plan --json says the same to machines, each quantity with its units") {
  const SurveyedCase surveyed;
  const Outcome outcome = run({"stillground", "plan", "surveyed.yaml", "--json"}, surveyed.folder);
  REQUIRE(outcome.status == 0);
  const auto plan = nlohmann::json::parse(outcome.out);
  CHECK(plan["bores"] == 3);
  CHECK(plan["active_length"]["value"] == 165);  // 60 m + 60 m + 45 m
  CHECK(plan["length"]["value"] == 169.5);       // and 1.5 m of trench for each
  CHECK(plan["length"]["units"] == "m");
  CHECK(plan["nearest_spacing"]["value"] == 6);
  CHECK(plan["positions"]["name"]["values"][2] == "C, the old one");
  CHECK(plan["positions"]["stop"]["values"][0].is_null());
  CHECK(plan["positions"]["stop"]["values"][2] == "2028-04-27");
  CHECK(plan["positions"]["number"]["values"][2] == 3);
}

TEST_CASE("plan --plot draws the bores, and tells phases and shut-off bores apart by their marks") {
  const SurveyedCase surveyed;
  REQUIRE(run({"stillground", "plan", "surveyed.yaml", "--plot", "plan.svg"}, surveyed.folder).status == 0);
  const std::string picture = bytes(surveyed.folder / "plan.svg");
  CHECK_THAT(picture, StartsWith("<svg ") && EndsWith("</svg>\n"));
  CHECK_THAT(picture, Contains(">works from 2027-07-02: 1 bore<") && Contains(">shut off from 2028-04-27<") &&
                          Contains(">3 \u00b7 C, the old one \u00b7 45 m<"));
  CHECK_THAT(picture, !Contains("hour"));
  const Outcome streamed = run({"stillground", "plan", "surveyed.yaml", "--plot", "-"}, surveyed.folder);
  CHECK(streamed.out == picture);
}

TEST_CASE("plan refuses a scenario that is not there, and a picture of another kind") {
  const PairCase pair;
  const Outcome missing = run({"stillground", "plan", "nowhere.yaml"}, pair.folder);
  CHECK(missing.status == 2);
  CHECK_THAT(missing.err, Contains("nowhere.yaml") && Contains("no such file"));
  CHECK(run({"stillground", "plan", "pair.yaml", "--plot", "plan.gif"}, pair.folder).status == 2);
  const Outcome both = run({"stillground", "plan", "pair.yaml", "--csv", "-", "--json"}, pair.folder);
  CHECK(both.status == 2);
  CHECK_THAT(both.err, Contains("standard output"));
}
