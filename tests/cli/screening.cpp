
#include "engine/record/read/result.hpp"
#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground::testing;

namespace {

/// The pair of bores, screened into pair.h5 beside it.
struct ScreenedPair : PairCase {
  Outcome outcome;

  ScreenedPair() {
    write_variant("screened.yaml", "years: 2}", "years: 2, method: screening}");
    outcome = run({"stillground", "run", "screened.yaml"}, folder);
  }
};

}  // namespace

TEST_CASE("A screening estimate is a result with the hours, without fields, that says so") {
  const ScreenedPair pair;
  REQUIRE(pair.outcome.status == 0);
  CHECK_THAT(pair.outcome.out,
             Contains("2029-07-01  year   2 of 2  EFT") && Contains("screened.h5 is complete, a screening estimate"));
  const stillground::record::read::Result result(pair.folder / "screened.h5");
  CHECK(result.header().method == "screening");
  CHECK(result.header().fields == "none");
  CHECK(result.hours().size() == 2 * 8760);
  CHECK(result.balances().empty());
  CHECK(result.snapshot_times().empty());
}

TEST_CASE("Equal screenings have equal bytes") {
  const ScreenedPair pair;
  REQUIRE(run({"stillground", "run", "screened.yaml", "-o", "again.h5"}, pair.folder).status == 0);
  CHECK(bytes(pair.folder / "again.h5") == bytes(pair.folder / "screened.h5"));
}

TEST_CASE("eft and compare read a screening estimate and say what it is; drift refuses it") {
  const ScreenedPair pair;
  const Outcome eft = run({"stillground", "eft", "screened.h5"}, pair.folder);
  CHECK(eft.status == 0);
  CHECK_THAT(eft.out, Contains("A screening estimate, not a march"));
  const Outcome table = run({"stillground", "eft", "screened.h5", "--csv", "-"}, pair.folder);
  CHECK_THAT(table.out, Contains("# A screening estimate, not a march"));

  REQUIRE(run({"stillground", "run", "pair.yaml"}, pair.folder).status == 0);
  CHECK_THAT(run({"stillground", "eft", "pair.h5"}, pair.folder).out, !Contains("screening"));
  const Outcome both = run({"stillground", "compare", "screened.h5", "pair.h5"}, pair.folder);
  CHECK(both.status == 0);
  CHECK_THAT(both.out, Contains("A screening estimate, not a march") && Contains("march"));

  const Outcome drift = run({"stillground", "drift", "screened.h5"}, pair.folder);
  CHECK(drift.status == 2);
  CHECK_THAT(drift.err, Contains("screened.h5: run.method: a screening estimate has no ground temperatures"));
}

TEST_CASE("A screening estimate leaves no checkpoint to go on from") {
  const ScreenedPair pair;
  const Outcome outcome = run({"stillground", "run", "screened.yaml", "--resume"}, pair.folder);
  CHECK(outcome.status == 2);
  CHECK_THAT(outcome.err, Contains("--resume: a screening estimate leaves no checkpoint"));
}
