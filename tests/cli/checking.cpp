#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground::testing;
using Catch::Contains;

TEST_CASE("check tells what would be run and leaves nothing behind") {
  const PairCase pair;
  const Outcome outcome = run({"stillground", "check", "pair.yaml"}, pair.folder);
  CHECK(outcome.status == 0);
  CHECK_THAT(outcome.out, Contains("Two bores for the tests") && Contains("2027-07-01 to 2029-07-01, 2 years") &&
                              Contains("2 bores, 6.00 m apart") && Contains("120.0 m active, 123.0 m to drill") &&
                              Contains("turbulent") && Contains("an hour's EFT errs by at most about 0.0"));
  CHECK_FALSE(std::filesystem::exists(pair.folder / "pair.h5"));
}

TEST_CASE("check --json says the same to machines, each quantity with its units") {
  const PairCase pair;
  const Outcome outcome = run({"stillground", "check", "pair.yaml", "--json"}, pair.folder);
  REQUIRE(outcome.status == 0);
  const auto plan = nlohmann::json::parse(outcome.out);
  CHECK(plan["bores"] == 2);
  CHECK(plan["groups"] == 1);
  CHECK(plan["active_length"]["value"] == Approx(120).epsilon(1e-12));
  CHECK(plan["active_length"]["units"] == "m");
  CHECK(plan["step"]["value"] == 1800);
  // 4 kW for 12 hours on the 120 + 85 days of the heating season.
  CHECK(plan["heating"]["value"] == Approx(4000.0 * 3600 * 12 * 205).epsilon(1e-12));
  CHECK(plan["heating_peak"]["value"] == 4000);
  CHECK(plan["warnings"].is_array());
  const auto& error = plan["eft_error_estimate"];
  const auto part = [&](const char* name) { return error[name]["value"].get<double>(); };
  CHECK(error["total"]["units"] == "K");
  CHECK(part("step") > 0);
  CHECK(part("grid") > 0);
  CHECK(part("refresh") > 0);
  CHECK(part("total") >= std::max({part("step"), part("grid"), part("refresh")}));
  CHECK(part("total") <= part("step") + part("grid") + part("refresh") + 1e-12);
}

TEST_CASE("check refuses what run would refuse, in the same words") {
  const PairCase pair;
  pair.write_variant("wrong.yaml", "depth: 60 m", "depth: 60 W");
  const Outcome checked = run({"stillground", "check", "wrong.yaml"}, pair.folder);
  const Outcome started = run({"stillground", "run", "wrong.yaml"}, pair.folder);
  CHECK(checked.status == 2);
  CHECK(started.status == 2);
  CHECK(checked.err == started.err);
  CHECK_THAT(checked.err, Catch::StartsWith("wrong.yaml:14:10: bore.depth: \"60 W\""));
}
