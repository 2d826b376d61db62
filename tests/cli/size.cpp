#include <signal.h>
#include <unistd.h>

#include <fmt/format.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground::testing;

namespace {

Outcome size(const PairCase& pair, std::vector<std::string> words) {
  words.insert(words.begin(), {"stillground", "size"});
  return run(words, pair.folder);
}

nlohmann::json found(const PairCase& pair, std::vector<std::string> words) {
  words.emplace_back("--json");
  const Outcome outcome = size(pair, words);
  CAPTURE(outcome.err);
  REQUIRE(outcome.status == 0);
  return nlohmann::json::parse(outcome.out);
}

/// The margin that `run` and `compare` find for pair.yaml with another depth [K].
double marched_margin(const PairCase& pair, double depth) {
  pair.write_variant("other.yaml", "depth: 60 m", fmt::format("depth: {:.10g} m", depth));
  REQUIRE(run({"stillground", "run", "other.yaml"}, pair.folder).status == 0);
  const auto json = nlohmann::json::parse(run({"stillground", "compare", "other.h5", "--json"}, pair.folder).out);
  return json.at("layouts").at(0).at("margin").at("value");
}

}  // namespace

TEST_CASE("The least depth is a march that keeps the limits, the next smaller one a march that does not") {
  const PairCase pair;
  const auto json = found(pair, {"pair.yaml", "--vary", "depth"});
  CHECK(json["vary"] == "depth");
  CHECK(json["units"] == "m");
  CHECK(json["kept"] == true);
  CHECK(json["limit"] == "eft_min");
  const double value = json["value"], below = json["next_smaller"];
  CHECK(value - below == Approx(0.1));
  CHECK(json["runs"]["screening"] <= 8);
  CHECK(json["runs"]["march"] <= 4);
  const double margin = marched_margin(pair, value);
  CHECK(margin >= 0);
  CHECK(json["march"]["margin"]["value"] == Approx(margin).margin(1e-6));
  CHECK(marched_margin(pair, below) < 0);
  const double gain = json["gain"]["value"];
  CHECK((marched_margin(pair, value + 2) - margin) / 2 == Approx(gain).epsilon(0.15));  // a secant over 2 m
}

TEST_CASE("size says what binds, when, and what a metre or a foot more brings") {
  const PairCase pair;
  const Outcome si = size(pair, {"pair.yaml", "--vary", "depth", "--step", "5 m"});
  CHECK_THAT(si.out, Contains("Least depth that keeps all limits for 2 years: ") && Contains("binding limit") &&
                         Contains("a metre more") && Contains(" of run-year 2, 20") && Contains("No warnings") &&
                         Contains("\nCautions\n"));
  const Outcome us = size(pair, {"pair.yaml", "--vary", "depth", "--step", "20 ft", "--units", "us"});
  CHECK_THAT(us.out, Contains("a foot more") && Contains("degF/ft") && !Contains("degC") && !Contains(" K\n"));
}

TEST_CASE("Where nothing in range keeps the limits size says what is missing, and where everything does the least") {
  const PairCase pair;
  const auto none = found(pair, {"pair.yaml", "--vary", "depth", "--values", "20 m, 25 m"});
  CHECK(none["kept"] == false);
  CHECK(none["value"].is_null());
  CHECK(none["next_smaller"] == 25);
  CHECK(none["missing"]["value"] > 0);
  const auto all = found(pair, {"pair.yaml", "--vary", "depth", "--values", "200 m, 150 m"});
  CHECK(all["kept"] == true);
  CHECK(all["value"] == 150);
  CHECK(all["next_smaller"].is_null());
}

TEST_CASE("size counts bores along the scenario's shape, and those that a plot of land holds") {
  const PairCase pair;
  pair.write_variant("line.yaml", "grid: {rows: 1, columns: 2, spacing: 6 m}", "line: {bores: 2, spacing: 6 m}");
  const auto line = found(pair, {"line.yaml", "--vary", "count", "--from", "1", "--to", "8"});
  CHECK(line["units"] == "bores");
  REQUIRE(line["kept"] == true);
  const int value = line["value"];
  CHECK(line["next_smaller"] == value - 1);
  CHECK_THAT(line["looks"]["count"]["values"].dump(), Contains(std::to_string(value + 1)));  // both neighbours
  std::ofstream(pair.folder / "plot.csv") << "x [m],y [m]\n0,0\n30,0\n30,20\n0,20\n";
  const auto plot = found(pair, {"pair.yaml", "--vary", "count", "--within", "plot.csv", "--from", "1", "--to", "8"});
  REQUIRE(plot["kept"] == true);
  CHECK(plot["spacing"]["value"] >= 4.5);
}

TEST_CASE("size finds the least spacing") {
  const PairCase pair;
  const auto json = found(pair, {"pair.yaml", "--vary", "spacing", "--values", "2 m, 4 m, 6 m, 9 m, 12 m"});
  CHECK(json["vary"] == "spacing");
  CHECK(json["shape"] != "no order");
}

TEST_CASE("size refuses what cannot be varied") {
  const PairCase pair;
  const auto refused = [&](const std::vector<std::string>& words, const std::string& said) {
    const Outcome outcome = size(pair, words);
    CAPTURE(words);
    CHECK(outcome.status == 2);
    CHECK_THAT(outcome.err, Contains(said));
  };
  pair.write_variant("free.yaml", "limits: {eft_min: 0 degC, eft_max: 30 degC}", "");
  std::ofstream(pair.folder / "bores.csv") << "x [m],y [m],depth [m]\n0,0,50\n6,0,70\n";
  pair.write_variant("surveyed.yaml", "grid: {rows: 1, columns: 2, spacing: 6 m}", "positions: bores.csv");
  pair.write_variant("lone.yaml", "grid: {rows: 1, columns: 2, spacing: 6 m}", "grid: {rows: 1, columns: 1}");
  refused({"pair.yaml"}, "--vary");
  refused({"pair.yaml", "--vary", "width"}, "none of depth, spacing, count");
  refused({"free.yaml", "--vary", "depth"}, "nothing to size by");
  refused({"surveyed.yaml", "--vary", "depth"}, "depths of their own");
  refused({"surveyed.yaml", "--vary", "spacing"}, "no spacing to vary");
  refused({"surveyed.yaml", "--vary", "count"}, "--within");
  refused({"lone.yaml", "--vary", "spacing"}, "a lone bore");
  refused({"pair.yaml", "--vary", "depth", "--from", "100"}, "--from");
  refused({"pair.yaml", "--vary", "depth", "--from", "100 m", "--to", "50 m"}, "no value between");
  refused({"pair.yaml", "--vary", "depth", "--to", "10 km"}, "bore.depth");
  refused({"pair.yaml", "--vary", "count", "--values", "3.5"}, "not a count of bores");
  refused({"pair.yaml", "--vary", "depth", "--values", "60 m", "--step", "5 m"}, "--step");
  refused({"pair.yaml", "--vary", "depth", "--within", "plot.csv"}, "belongs to --vary count");
  refused({"missing.yaml", "--vary", "depth"}, "no such file");
}

TEST_CASE("A search that is interrupted ends with 130") {
  const PairCase pair;
  pair.write_variant("long.yaml", "years: 2", "years: 60");
  Process process({"stillground", "size", "long.yaml", "--vary", "depth"}, pair.folder);
  ::usleep(2000000);
  process.send(SIGINT);
  const Outcome outcome = process.wait();
  CHECK(outcome.status == 130);
  CHECK_THAT(outcome.err, Contains("interrupted"));
}
