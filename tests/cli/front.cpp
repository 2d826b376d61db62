
#include <stillground/version.hpp>

#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/unit/base/scratch.hpp"

using namespace stillground::testing;

TEST_CASE("Every verb tells its use and its version") {
  const Scratch scratch;
  const auto verbs = built_verbs();
  REQUIRE(verbs.size() >= 5);  // check, run, eft, drift, compare
  for (const auto& verb : verbs) {
    INFO(verb);
    const Outcome help = run({"stillground", verb, "--help"}, scratch.folder);
    CHECK(help.status == 0);
    CHECK_THAT(help.out, Contains("Usage: stillground " + verb));
    CHECK(help.err.empty());
    const Outcome version = run({"stillground", verb, "--version"}, scratch.folder);
    CHECK(version.status == 0);
    CHECK_THAT(version.out, StartsWith("stillground " + verb + " " + stillground::version() + "\n"));
  }
}

TEST_CASE("The front program lists every verb with what it says of itself") {
  const Scratch scratch;
  const Outcome help = run({"stillground", "--help"}, scratch.folder);
  CHECK(help.status == 0);
  for (const auto& verb : built_verbs()) {
    const std::string purpose = run({"stillground-" + verb, "--purpose"}, scratch.folder).out;
    CHECK(purpose.size() > 10);
    CHECK_THAT(help.out, Contains("  " + verb + " ") && Contains(purpose));
  }
}

TEST_CASE("A wrong verb is refused with the nearest one") {
  const Scratch scratch;
  const Outcome outcome = run({"stillground", "chekc", "site.yaml"}, scratch.folder);
  CHECK(outcome.status == 2);
  CHECK(outcome.out.empty());
  CHECK_THAT(outcome.err, StartsWith("stillground: there is no verb \"chekc\" (did you mean \"check\"?"));
}

TEST_CASE("No verb at all is an error that lists them") {
  const Scratch scratch;
  const Outcome outcome = run({"stillground"}, scratch.folder);
  CHECK(outcome.status == 2);
  CHECK_THAT(outcome.err, Contains("a verb is missing") && Contains("  check "));
}

TEST_CASE("Every verb refuses an unknown option, a missing argument and a missing file with status 2") {
  const Scratch scratch;
  for (const auto& verb : built_verbs()) {
    INFO(verb);
    const Outcome option = run({"stillground", verb, "x", "--frobnicate"}, scratch.folder);
    CHECK(option.status == 2);
    CHECK_THAT(option.err, StartsWith("stillground " + verb + ": ") && Contains("--frobnicate"));
    const Outcome nothing = run({"stillground", verb}, scratch.folder);
    CHECK(nothing.status == 2);
    CHECK_THAT(nothing.err, StartsWith("stillground " + verb + ": "));
  }
  for (const std::string verb : {"check", "run", "eft", "drift"}) {
    INFO(verb);
    const Outcome missing = run({"stillground", verb, "no_such_file"}, scratch.folder);
    CHECK(missing.status == 2);
    CHECK(missing.out.empty());
    CHECK_THAT(missing.err, Contains("no_such_file"));
  }
}
