#include <csignal>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "engine/record/read/result.hpp"
#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground::testing;
namespace fs = std::filesystem;

namespace {

const std::string twelve =
    "  bore.depth: [50 m, 60 m, 70 m]\n  bore.grout.conductivity: {from: 0.8 W/(m K), to: 1.6 W/(m K), step: 0.8 W/(m "
    "K)}\n"
    "  field: [{name: pair, grid: {rows: 1, columns: 2, spacing: 6 m}}, {name: ring, ring: {bores: 3, spacing: 6 "
    "m}}]\n";

struct SweptPair : PairCase {
  explicit SweptPair(const std::string& vary = twelve, const std::string& rest = "") {
    std::ofstream(folder / "plan.yaml") << "scenario: pair.yaml\nvary:\n" << vary << rest;
  }

  Outcome sweep(const std::string& out, const std::vector<std::string>& more = {}) const {
    std::vector<std::string> words{"stillground", "sweep", "plan.yaml", "-o", out};
    words.insert(words.end(), more.begin(), more.end());
    return run(words, folder);
  }

  std::string summary(const std::string& out) const { return bytes(folder / out / "summary.csv"); }
};

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

}  // namespace

TEST_CASE("A sweep leaves one row a point, results of those marched, and pictures") {
  const SweptPair pair(twelve, "prices: {drilling: 48 /m, bore: 350}\n");
  const Outcome outcome = pair.sweep("out");
  INFO(outcome.err);
  REQUIRE(outcome.status == 0);
  const auto lines = lines_of(pair.summary("out"));
  REQUIRE(lines.size() == 13);
  CHECK_THAT(lines[0], StartsWith("bore.depth,bore.grout.conductivity,field,eft_min,eft_max,margin,"
                                  "first_year_beyond,hours_beyond,drift,length,power,performance,"
                                  "cost,method,warnings"));
  CHECK_THAT(lines[1], StartsWith("50 m,0.8 W/(m K),pair,"));
  CHECK_THAT(lines[12], StartsWith("70 m,1.6 W/(m K),ring,"));
  int marched = 0;
  for (const auto& line : lines) {
    const auto at = line.find("results/");
    if (at == std::string::npos) continue;
    ++marched;
    const std::string file = line.substr(at, line.find(',', at) - at);
    CHECK(stillground::record::read::Result(pair.folder / "out" / file).header().method == "march");
  }
  CHECK(marched >= 3);
  for (const char* file : {"eft_by_bore.depth.svg", "eft_by_field.svg", "trade_off.svg"}) {
    CHECK_THAT(bytes(pair.folder / "out" / file), StartsWith("<svg"));
  }
  CHECK_THAT(outcome.out,
             Contains("12 points: ") && Contains("Ranked by least cost that keeps the limits") && Contains("Cautions"));
  CHECK_THAT(outcome.err, Contains("results take up to"));
}

TEST_CASE("The summary is the same at any number of threads, and after a kill at any moment") {
  const SweptPair pair;
  REQUIRE(pair.sweep("one", {"--threads", "1"}).status == 0);
  REQUIRE(pair.sweep("three", {"--threads", "3"}).status == 0);
  CHECK(pair.summary("one") == pair.summary("three"));
  for (const char* moment : {"3 of 12 points screened", "points marched"}) {
    fs::remove_all(pair.folder / "killed");
    {
      Process process({"stillground", "sweep", "plan.yaml", "-o", "killed"}, pair.folder);
      REQUIRE(process.has_said(moment));
      process.send(SIGKILL);
      CHECK(process.wait().status == 128 + SIGKILL);
    }
    CHECK_FALSE(fs::exists(pair.folder / "killed/summary.csv"));
    const Outcome resumed = pair.sweep("killed");
    CHECK(resumed.status == 0);
    CHECK_THAT(resumed.err, !Contains("12 of 12 points screened"));
    CHECK(pair.summary("killed") == pair.summary("one"));
  }
}

TEST_CASE("A finished sweep that is asked for again computes nothing, and a changed plan only what is new") {
  const SweptPair pair;
  REQUIRE(pair.sweep("out").status == 0);
  const std::string before = pair.summary("out");
  const Outcome again = pair.sweep("out");
  CHECK_THAT(again.err, !Contains("screened") || Contains("screening, then"));
  CHECK_THAT(again.err, !Contains(" of "));
  CHECK(pair.summary("out") == before);
  std::ofstream(pair.folder / "plan.yaml")
      << "scenario: pair.yaml\nmethod: screening\nvary:\n  bore.depth: [55 m, 60 m]\n";
  const Outcome changed = pair.sweep("out");
  CHECK(changed.status == 0);
  CHECK_THAT(changed.err, Contains("2 of 2 points screened"));  // of a response of their own: the twelve shared theirs
  std::ofstream(pair.folder / "plan.yaml")
      << "scenario: pair.yaml\nmethod: screening\nvary:\n  bore.depth: [55 m, 60 m, 65 m]\n";
  CHECK_THAT(pair.sweep("out").err, Contains("1 of 1 points screened"));
}

TEST_CASE("A signal ends a sweep with status 130, and the same command goes on") {
  const SweptPair pair;
  {
    Process process({"stillground", "sweep", "plan.yaml", "-o", "out"}, pair.folder);
    REQUIRE(process.has_said("2 of 12 points screened"));
    process.send(SIGTERM);
    const Outcome outcome = process.wait();
    CHECK(outcome.status == 130);
    CHECK_THAT(outcome.err, Contains("the same command goes on"));
  }
  CHECK(pair.sweep("out").status == 0);
}

TEST_CASE("A march that a signal stops in a sweep goes on from its checkpoint") {
  const SweptPair pair("  bore.depth: [50 m]\n", "method: march\n");
  pair.write_variant("pair.yaml", "years: 2}", "years: 20}");
  {
    Process process({"stillground", "sweep", "plan.yaml", "-o", "out"}, pair.folder);
    REQUIRE(process.has_said("0 of 1 points marched,"));  // a tenth of it is done
    process.send(SIGTERM);
    const Outcome outcome = process.wait();
    CHECK(outcome.status == 130);
    CHECK_THAT(outcome.err, Contains("a checkpoint is saved, the same command goes on") && !Contains("--resume"));
  }
  const Outcome resumed = pair.sweep("out");
  CHECK(resumed.status == 0);
  REQUIRE(pair.sweep("undisturbed").status == 0);
  CHECK(pair.summary("out") == pair.summary("undisturbed"));
}

TEST_CASE("A point that fails is a row with its reason, and does not end the others") {
  const SweptPair pair("  bore.depth: [60 m, 2 m, 70 m]\n", "method: screening\n");
  const Outcome outcome = pair.sweep("out");
  CHECK(outcome.status == 0);
  const auto lines = lines_of(pair.summary("out"));
  REQUIRE(lines.size() == 4);
  CHECK_THAT(lines[2], StartsWith("2 m,,,,") && Contains("plan.yaml:3:22: bore.depth: \"\"2 m\"\" is out of range"));
  CHECK_THAT(lines[3], StartsWith("70 m,") && Contains("screening"));
  CHECK_THAT(outcome.out, Contains("1 failed"));
}

TEST_CASE("What no screening is for is marched, and a row with the reason where only a screening is asked for") {
  const SweptPair pair("  bore.depth: [50 m, 60 m]\n", "method: screening, then march the best 1\n");
  std::ofstream(pair.folder / "bores.csv") << "x [m],y [m],start\n0,0,\n6,0,2028-07-01\n";
  pair.write_variant("pair.yaml", "grid: {rows: 1, columns: 2, spacing: 6 m}", "positions: bores.csv");
  REQUIRE(pair.sweep("out").status == 0);
  for (const auto& line : lines_of(pair.summary("out"))) CHECK_THAT(line, Contains("method") || Contains(",march,"));
  std::ofstream(pair.folder / "plan.yaml", std::ios::app) << "rank: length\n";
  std::string text = bytes(pair.folder / "plan.yaml");
  std::ofstream(pair.folder / "plan.yaml") << text.replace(text.find(", then march the best 1"), 23, "");
  REQUIRE(pair.sweep("out").status == 0);
  CHECK_THAT(lines_of(pair.summary("out"))[1], StartsWith("50 m,,,") && Contains("run.method"));
}

TEST_CASE("Points computed one by one, twice and in any order are gathered to the same summary as the sweep's") {
  const SweptPair pair;
  REQUIRE(pair.sweep("alone").status == 0);
  const Outcome list = run({"stillground", "sweep", "plan.yaml", "--list"}, pair.folder);
  CHECK_THAT(list.out, StartsWith("12 points\n") && Contains("70 m") && Contains("ring"));
  for (const int number : {12, 3, 5, 1, 2, 4, 6, 7, 8, 3}) {
    REQUIRE(pair.sweep("out", {"--point", std::to_string(number)}).status == 0);
  }
  Outcome gathered = pair.sweep("out", {"--gather"});
  CHECK_THAT(gathered.out, Contains("Missing: 3 points: 9-11"));
  CHECK(lines_of(pair.summary("out")).size() == 10);
  for (const char* number : {"9", "10", "11"}) pair.sweep("out", {"--point", number});
  gathered = pair.sweep("out", {"--gather", "--json"});
  auto json = nlohmann::json::parse(gathered.out);
  CHECK(json["missing"].empty());
  for (int round = 0; round < 3 && !json["to_march"].empty(); ++round) {
    for (const int number : json["to_march"]) {
      CHECK_THAT(pair.sweep("out", {"--point", std::to_string(number)}).out, Contains("marched"));
    }
    json = nlohmann::json::parse(pair.sweep("out", {"--gather", "--json"}).out);
  }
  CHECK(json["to_march"].empty());
  CHECK(pair.summary("out") == pair.summary("alone"));
  CHECK_THAT(pair.sweep("out", {"--list"}).out, Contains("marched") && Contains("screened") && !Contains("missing"));
}

TEST_CASE("Two processes at one point do not disturb each other") {
  const SweptPair pair("  bore.depth: [50 m, 60 m]\n", "method: march\n");
  {
    Process one({"stillground", "sweep", "plan.yaml", "-o", "out", "--point", "1"}, pair.folder);
    Process other({"stillground", "sweep", "plan.yaml", "-o", "out", "--point", "1"}, pair.folder);
    CHECK(one.wait().status == 0);
    CHECK(other.wait().status == 0);
  }
  CHECK_THAT(pair.sweep("out", {"--gather"}).out, Contains("Missing: 1 points: 2"));
}

TEST_CASE("A sweep in JSON has units beside every figure, in either system, and the file stays as it is") {
  const SweptPair pair("  bore.depth: [50 m, 60 m]\n", "method: screening\nkeep: results\n");
  const auto json = nlohmann::json::parse(pair.sweep("out", {"--json"}).out);
  CHECK(json["summary"]["eft_min"]["units"] == "degC");
  CHECK(json["summary"]["bore.depth"]["values"][1] == "60 m");
  CHECK(json["summary"]["drift"]["values"][0].is_null());
  CHECK_FALSE(json["warnings"].empty());
  CHECK_FALSE(json["cautions"].empty());
  const std::string before = pair.summary("out");
  const auto us = nlohmann::json::parse(pair.sweep("out", {"--json", "--units", "us"}).out);
  CHECK(us["summary"]["eft_min"]["units"] == "degF");
  CHECK(us["summary"]["length"]["units"] == "ft");
  CHECK_THAT(pair.sweep("out", {"--units", "us"}).out, Contains("degF"));
  CHECK(pair.summary("out") == before);
  const std::string file = json["summary"]["result"]["values"][0];
  CHECK(stillground::record::read::Result(pair.folder / "out" / file).header().method == "screening");
}

TEST_CASE("A sweep refuses what it cannot begin") {
  const SweptPair pair("  bore.depth: [50 m, 60 m]\n");
  const auto refused = [&](const std::vector<std::string>& words, const std::string& why) {
    const Outcome outcome = run(words, pair.folder);
    CHECK(outcome.status == 2);
    CHECK(outcome.out.empty());
    CHECK_THAT(outcome.err, Contains(why));
  };
  refused({"stillground", "sweep", "plan.yaml"}, "-o FOLDER is needed");
  refused({"stillground", "sweep", "plan.yaml", "-o", "."}, "holds files that are no sweep's");
  refused({"stillground", "sweep", "plan.yaml", "-o", "pair.yaml"}, "is a file");
  refused({"stillground", "sweep", "plan.yaml", "-o", "out", "--point", "3"},
          "3 is none of the plan's points (1 to 2)");
  refused({"stillground", "sweep", "plan.yaml", "-o", "out", "--point", "1", "--gather"}, "--gather");
  refused({"stillground", "sweep", "no.yaml", "-o", "out2"}, "no.yaml");
  std::ofstream(pair.folder / "many.yaml") << "scenario: pair.yaml\nvary:\n"
                                              "  bore.depth: {from: 20 m, to: 119 m, step: 1 m}\n"
                                              "  bore.top: {from: 0.5 m, to: 10.4 m, step: 0.1 m}\n"
                                              "  flow.per_bore: {from: 0.2 L/s, to: 1.19 L/s, step: 0.01 L/s}\n";
  refused({"stillground", "sweep", "many.yaml", "-o", "out3"},
          "many.yaml: vary: makes 1000000 points (allowed: up to 100000)");
  CHECK_FALSE(fs::exists(pair.folder / "out3"));
}
