
#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/unit/base/scratch.hpp"

using namespace stillground::testing;

TEST_CASE("Output that a full disk refuses is a failure, not a success") {
  const Scratch scratch;
  const Outcome outcome = run({"stillground", "run", "--help"}, scratch.folder, "/dev/full");
  CHECK(outcome.status == 3);
  CHECK_THAT(outcome.err, Contains("standard output: No space left on device"));
}

TEST_CASE("A closed standard output is a failure") {
  const Scratch scratch;
  const Outcome outcome = run({"stillground", "run", "--help"}, scratch.folder, "closed");
  CHECK(outcome.status == 3);
  CHECK_THAT(outcome.err, Contains("standard output: Bad file descriptor"));
}

TEST_CASE("A reader that has gone away ends the program without a word") {
  const Scratch scratch;
  const Outcome outcome = run({"stillground", "run", "--help"}, scratch.folder, "nobody");
  CHECK(outcome.status == 3);  // not everything was delivered
  CHECK(outcome.err.empty());
}
