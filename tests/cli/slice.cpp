#include <algorithm>
#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "engine/record/read/result.hpp"
#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground;
using namespace stillground::testing;

namespace {

struct MarchedPair : PairCase {
  MarchedPair() { REQUIRE(run({"stillground", "run", "pair.yaml"}, folder).status == 0); }
  Outcome slice(std::vector<std::string> words) const {
    words.insert(words.begin(), {"stillground", "slice", "pair.h5"});
    return run(words, folder);
  }
};

/// Wall temperature of group 0 at a depth and the last instant of the run, straight between layers [degC].
double wall_at(const record::read::Result& result, double depth) {
  const record::Snapshot last = result.snapshot(result.snapshot_times().size() - 1);
  const auto& z = result.header().z;
  const auto k = static_cast<std::size_t>(std::upper_bound(z.begin(), z.end(), depth) - z.begin());
  const double part = (depth - z[k - 1]) / (z[k] - z[k - 1]);
  return last.wall_temperature[k - 1] + part * (last.wall_temperature[k] - last.wall_temperature[k - 1]) - 273.15;
}

}  // namespace

// The first ring's middle lies a centimetre behind the wall; eight hours after the last heat that is less than 0.02 K.
TEST_CASE("At a bore the ground that is cut is the wall that the run marched") {
  const MarchedPair pair;
  const Outcome outcome = pair.slice({"--section", "0,0,6,0", "--json"});
  REQUIRE(outcome.status == 0);
  const auto points = nlohmann::json::parse(outcome.out).at("points");
  const record::read::Result result(pair.folder / "pair.h5");
  int compared = 0;
  for (std::size_t i = 0; i < points.at("x").at("values").size(); ++i) {
    const double x = points.at("x").at("values")[i], depth = points.at("depth").at("values")[i];
    if ((x != 0 && x != 6) || depth < 15 || depth > 55) continue;
    ++compared;
    CHECK(points.at("temperature").at("values")[i].get<double>() == Approx(wall_at(result, depth)).margin(0.02));
    CHECK(std::abs(points.at("rise").at("values")[i].get<double>()) > 0.1);
  }
  CHECK(compared > 100);
}

TEST_CASE("slice tells where and when it cuts, and how far the ground is changed") {
  const MarchedPair pair;
  const Outcome level = pair.slice({"--depth", "30", "--at", "2028-02-01"});
  CHECK(level.status == 0);
  CHECK_THAT(level.out, Contains("Ground temperature at 30.0 m depth on 2028-02-01 00:00") && Contains("undisturbed") &&
                            !Contains("lies between"));
  CHECK_THAT(pair.slice({"--depth", "98.425 ft", "--at", "2028-02-11", "--units", "us"}).out,
             Contains("at 98.4 ft depth") && Contains("degF") && Contains("lies between two that the run kept"));
  CHECK_THAT(pair.slice({"--boundary"}).out,
             Contains("Along the bores' hull widened by half their distance the ground, at "
                      "whatever depth,") &&
                 Contains("most warmed"));
  CHECK_THAT(pair.slice({"--boundary", "--depth", "30", "--outline", "-9,-9; 15,-9; 15,9; -9,9"}).out,
             Contains("Along the given outline the ground 30.0 m deep changes by at most"));
}

TEST_CASE("A scenario's plot is drawn and is the line that the neighbour asks about") {
  const PairCase pair;
  std::ofstream(pair.folder / "land.csv") << "x [m],y [m]\n0,0\n14,0\n14,8\n0,8\n";
  pair.write_variant("plot.yaml", "grid: {rows: 1, columns: 2, spacing: 6 m}",
                     "plot: {outline: land.csv, setback: 3 m, spacing: 6 m}");
  const Outcome marched = run({"stillground", "run", "plot.yaml"}, pair.folder);
  INFO(marched.err);
  REQUIRE(marched.status == 0);
  CHECK_THAT(run({"stillground", "slice", "plot.h5", "--boundary"}, pair.folder).out,
             Contains("Along the plot's outline"));
  CHECK_THAT(run({"stillground", "slice", "plot.h5", "--depth", "30", "--plot", "-"}, pair.folder).out,
             Contains("outline of the plot"));
}

TEST_CASE("slice draws and writes what it cuts") {
  const MarchedPair pair;
  CHECK_THAT(pair.slice({"--depth", "30", "--plot", "-", "--rise"}).out,
             StartsWith("<svg") && Contains("change [K]") && Contains("Change of the ground's temperature"));
  CHECK_THAT(pair.slice({"--section=-5,0,11,0", "--plot", "-"}).out, Contains("depth [m]") && Contains(">bore<"));
  CHECK_THAT(pair.slice({"--boundary", "--plot", "-"}).out,
             StartsWith("<svg") && Contains("How far does the field reach?"));
  CHECK_THAT(pair.slice({"--depth", "30", "--csv", "-"}).out,
             Contains("\nx [m],y [m],depth [m],temperature [degC],rise [K]\n"));
  REQUIRE(pair.slice({"--depth", "30", "--plot", "map.png"}).status == 0);
  CHECK_THAT(bytes(pair.folder / "map.png").substr(1, 3), Equals("PNG"));
}

TEST_CASE("The animation is one page for itself, with a slider over the years") {
  const MarchedPair pair;
  REQUIRE(pair.slice({"--depth", "30", "--animate", "years.html"}).status == 0);
  std::string page = bytes(pair.folder / "years.html");
  CHECK_THAT(page, StartsWith("<!DOCTYPE html>") && Contains("type=\"range\" id=\"year\" min=\"0\" max=\"2\"") &&
                       Contains("2029-07-01, end of run-year 2") && Contains("Cautions"));
  for (auto at = page.find("http"); at != page.npos; at = page.find("http", at + 1)) {
    CHECK(page.substr(at, 26) == "http://www.w3.org/2000/svg");
  }
  CHECK_THAT(page, !Contains("src="));
}

TEST_CASE("slice refuses what it cannot cut") {
  const MarchedPair pair;
  const auto refused = [&](std::vector<std::string> words, const std::string& why) {
    const Outcome outcome = pair.slice(std::move(words));
    CHECK(outcome.status == 2);
    CHECK_THAT(outcome.err, Contains(why));
  };
  refused({}, "where is the ground to be cut?");
  refused({"--depth", "-1"}, "outside what was computed");
  refused({"--depth", "9000 m"}, "outside what was computed");
  refused({"--depth", "30 W"}, "--depth");
  refused({"--depth", "30", "--section", "0,0,1,1"}, "excludes");
  refused({"--section", "0,0,0,0"}, "the line has no length");
  refused({"--section", "0,0,5"}, "is not x0,y0,x1,y1");
  refused({"--depth", "30", "--at", "soon"}, "--at: \"soon\" is");
  refused({"--depth", "30", "--at", "2040-01-01"}, "is outside the run, 2027-07-01 00:00 to 2029-07-01 00:00");
  refused({"--boundary", "--outline", "0,0; 1,1"}, "at least three places");
  refused({"--depth", "30", "--outline", "0,0; 1,1; 1,0"}, "requires --boundary");
  refused({"--depth", "30", "--plot", "-", "--animate", "-"}, "standard output");
}

TEST_CASE("An estimate and a run that kept the years' ends say what they cannot show") {
  const PairCase pair;
  pair.write_variant("screened.yaml", "years: 2}", "years: 2, method: screening}");
  pair.write_variant("yearly.yaml", "limits:", "record: {fields: yearly}\nlimits:");
  REQUIRE(run({"stillground", "run", "screened.yaml"}, pair.folder).status == 0);
  REQUIRE(run({"stillground", "run", "yearly.yaml"}, pair.folder).status == 0);
  const Outcome screened = run({"stillground", "slice", "screened.h5", "--depth", "30"}, pair.folder);
  CHECK(screened.status == 2);
  CHECK_THAT(screened.err, Contains("a screening estimate has no ground temperatures"));
  const Outcome between =
      run({"stillground", "slice", "yearly.h5", "--depth", "30", "--at", "2028-01-01"}, pair.folder);
  CHECK(between.status == 2);
  CHECK_THAT(between.err, Contains("lies between two instants that the run kept (fields: yearly)"));
  CHECK(run({"stillground", "slice", "yearly.h5", "--depth", "30"}, pair.folder).status == 0);
}
