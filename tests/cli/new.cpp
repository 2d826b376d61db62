#include <catch2/catch.hpp>
#include <fstream>

#include "tests/cli/command.hpp"
#include "tests/unit/base/scratch.hpp"

using namespace stillground::testing;
using Catch::Contains;

TEST_CASE("new writes a scenario that check accepts as it stands") {
  const Scratch scratch;
  REQUIRE(run({"stillground", "new", "site.yaml"}, scratch.folder).status == 0);
  const Outcome checked = run({"stillground", "check", "site.yaml"}, scratch.folder);
  INFO(checked.err);
  CHECK(checked.status == 0);
  CHECK_THAT(checked.out, Contains("No warnings"));
}

TEST_CASE("new writes the same to standard output, with a remark for those who read it") {
  const Scratch scratch;
  REQUIRE(run({"stillground", "new", "site.yaml"}, scratch.folder).status == 0);
  const Outcome shown = run({"stillground", "new", "-"}, scratch.folder);
  CHECK(shown.out == bytes(scratch.folder / "site.yaml"));
  CHECK_THAT(shown.out, Contains("# half the yearly range") && Contains("  # cooling_cop: "));
}

TEST_CASE("new never touches a file that is there") {
  const Scratch scratch;
  std::ofstream(scratch.folder / "site.yaml") << "a week of work";
  const Outcome outcome = run({"stillground", "new", "site.yaml"}, scratch.folder);
  CHECK(outcome.status == 2);
  CHECK_THAT(outcome.err, Contains("site.yaml exists already"));
  CHECK(bytes(scratch.folder / "site.yaml") == "a week of work");
}
