#include <cmath>
#include <csignal>

#include "engine/record/read/result.hpp"
#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground::testing;
namespace fs = std::filesystem;

namespace {

const std::vector<std::string> all_sets{"baseline", "avx2", "avx512"};

Outcome run_on(const std::string& set, const PairCase& pair, const std::string& result) {
  return run({"stillground", "run", "pair.yaml", "--instruction-set", set, "-o", result}, pair.folder);
}

/// Those of the three that this machine can run.
std::vector<std::string> sets_here(const PairCase& pair) {
  std::vector<std::string> here;
  for (const std::string& set : all_sets) {
    const Outcome outcome = run_on(set, pair, set + ".h5");
    if (outcome.status == 0) {
      here.push_back(set);
    } else {
      CHECK(outcome.status == 2);
      CHECK_THAT(outcome.err, StartsWith("stillground run: --instruction-set: ") && Contains("baseline"));
    }
  }
  return here;
}

double largest_difference(const fs::path& a, const fs::path& b) {
  const stillground::record::read::Result one(a), other(b);
  const auto hours = one.hours(), others = other.hours();
  REQUIRE(hours.size() == others.size());
  double largest = 0;
  for (std::size_t i = 0; i < hours.size(); ++i) largest = std::max(largest, std::abs(hours[i].eft - others[i].eft));
  return largest;
}

}  // namespace

TEST_CASE("A result says with which instructions it was marched; the same ones give the same bytes again") {
  const PairCase pair;
  pair.write_variant("pair.yaml", "years: 2}", "years: 1, groups: none}");
  const auto here = sets_here(pair);
  REQUIRE(!here.empty());
  CHECK(here.front() == "baseline");
  for (const std::string& set : here) {
    INFO(set);
    CHECK(stillground::record::read::Result(pair.folder / (set + ".h5")).header().instruction_set == set);
    REQUIRE(run({"stillground", "run", "pair.yaml", "--instruction-set", set, "--threads", "2", "-o", "again.h5"},
                pair.folder)
                .status == 0);
    CHECK(bytes(pair.folder / "again.h5") == bytes(pair.folder / (set + ".h5")));
    // Round-off alone: less than a microkelvin, a thousandth of what any step errs by.
    CHECK(largest_difference(pair.folder / "baseline.h5", pair.folder / (set + ".h5")) < 1e-6);
  }
  REQUIRE(run({"stillground", "run", "pair.yaml", "-o", "best.h5"}, pair.folder).status == 0);
  CHECK(bytes(pair.folder / "best.h5") == bytes(pair.folder / (here.back() + ".h5")));
}

TEST_CASE("A resumed run goes on with the instructions that it began with, and with no others") {
  const PairCase pair;
  pair.write_variant("long.yaml", "years: 2", "years: 4");
  REQUIRE(
      run({"stillground", "run", "long.yaml", "--instruction-set", "baseline", "-o", "whole.h5"}, pair.folder).status ==
      0);
  Process interrupted({"stillground", "run", "long.yaml", "--instruction-set", "baseline"}, pair.folder);
  REQUIRE(interrupted.has_said("year   2 of 4"));
  interrupted.send(SIGINT);
  REQUIRE(interrupted.wait().status == 130);

  const Outcome other = run({"stillground", "run", "long.yaml", "--resume", "--instruction-set", "avx2"}, pair.folder);
  CHECK(other.status == 2);
  CHECK_THAT(other.err, Contains("long.h5.spool was begun with baseline") && Contains("--instruction-set baseline"));
  REQUIRE(fs::exists(pair.folder / "long.h5.spool"));

  REQUIRE(run({"stillground", "run", "long.yaml", "--resume"}, pair.folder).status == 0);
  CHECK(bytes(pair.folder / "long.h5") == bytes(pair.folder / "whole.h5"));
}
