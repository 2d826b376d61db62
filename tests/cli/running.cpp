#include <csignal>
#include <fstream>

#include "engine/record/read/result.hpp"
#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground::testing;
namespace fs = std::filesystem;

namespace {

/// Names in a folder, without those the tests put there themselves.
std::vector<std::string> left_in(const fs::path& folder) {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(folder)) {
    const std::string name = entry.path().filename().string();
    if (!name.ends_with(".yaml") && name != "loads.csv" && !name.starts_with('.')) names.push_back(name);
  }
  return names;
}

}  // namespace

TEST_CASE("A run says each year's extremes and leaves one complete result under the scenario's name") {
  const PairCase pair;
  const Outcome outcome = run({"stillground", "run", "pair.yaml"}, pair.folder);
  CHECK(outcome.status == 0);
  CHECK_THAT(outcome.out, Contains("2028-07-01  year   1 of 2  EFT") && Contains("2029-07-01  year   2 of 2  EFT") &&
                              Contains("pair.h5 is complete"));
  CHECK_THAT(outcome.out, !Contains("\r"));  // no progress bar in a file
  CHECK_THAT(outcome.err, !Contains("\r"));
  CHECK(left_in(pair.folder) == std::vector<std::string>{"pair.h5"});
  const stillground::record::read::Result result(pair.folder / "pair.h5");
  CHECK(result.hours().size() == 2 * 8760);
}

TEST_CASE("The number of threads changes no byte of a result") {
  const PairCase pair;
  // Bores without groups, so that there is something to share out.
  pair.write_variant("ungrouped.yaml", "years: 2}", "years: 1, groups: none}");
  for (const std::string threads : {"1", "2", "3"}) {
    REQUIRE(run({"stillground", "run", "ungrouped.yaml", "--threads", threads, "-o", threads + ".h5"}, pair.folder)
                .status == 0);
  }
  const std::string one = bytes(pair.folder / "1.h5");
  REQUIRE(one.size() > 10000);
  CHECK(one == bytes(pair.folder / "2.h5"));
  CHECK(one == bytes(pair.folder / "3.h5"));
}

TEST_CASE("Ctrl-C leaves a checkpoint and no result; --resume ends with the bytes of an undisturbed run") {
  const PairCase pair;
  pair.write_variant("long.yaml", "years: 2", "years: 4");
  REQUIRE(run({"stillground", "run", "long.yaml", "-o", "whole.h5"}, pair.folder).status == 0);

  Process interrupted({"stillground", "run", "long.yaml"}, pair.folder);
  REQUIRE(interrupted.has_said("year   2 of 4"));
  interrupted.send(SIGINT);
  const Outcome outcome = interrupted.wait();
  CHECK(outcome.status == 130);
  CHECK_THAT(outcome.err, Contains("--resume"));
  CHECK_FALSE(fs::exists(pair.folder / "long.h5"));
  CHECK(fs::exists(pair.folder / "long.h5.spool"));
  CHECK_FALSE(fs::exists(pair.folder / "long.h5.part"));

  const Outcome resumed = run({"stillground", "run", "long.yaml", "--resume"}, pair.folder);
  CHECK(resumed.status == 0);
  CHECK_THAT(resumed.out, !Contains("year   1 of 4"));  // it went on, it did not start again
  CHECK_FALSE(fs::exists(pair.folder / "long.h5.spool"));
  const std::string whole = bytes(pair.folder / "whole.h5");
  REQUIRE(whole.size() > 10000);
  CHECK(bytes(pair.folder / "long.h5") == whole);
}

TEST_CASE("A kill costs what came after the last checkpoint, nothing more") {
  const PairCase pair;
  pair.write_variant("long.yaml", "years: 2", "years: 4");
  REQUIRE(run({"stillground", "run", "long.yaml", "-o", "whole.h5"}, pair.folder).status == 0);
  Process killed({"stillground", "run", "long.yaml"}, pair.folder);
  REQUIRE(killed.has_said("year   2 of 4"));
  killed.send(SIGKILL);
  CHECK(killed.wait().status == 128 + SIGKILL);
  CHECK_FALSE(fs::exists(pair.folder / "long.h5"));
  REQUIRE(run({"stillground", "run", "long.yaml", "--resume"}, pair.folder).status == 0);
  CHECK(bytes(pair.folder / "long.h5") == bytes(pair.folder / "whole.h5"));
  CHECK_FALSE(fs::exists(pair.folder / "long.h5.part"));  // what the killed run had written of its result
}

TEST_CASE("Nothing to resume, or a scenario that has changed, is refused") {
  const PairCase pair;
  const Outcome nothing = run({"stillground", "run", "pair.yaml", "--resume"}, pair.folder);
  CHECK(nothing.status == 2);
  CHECK(left_in(pair.folder).empty());

  pair.write_variant("long.yaml", "years: 2", "years: 4");
  Process interrupted({"stillground", "run", "long.yaml"}, pair.folder);
  REQUIRE(interrupted.has_said("year   1 of 4"));
  interrupted.send(SIGTERM);
  REQUIRE(interrupted.wait().status == 130);
  pair.write_variant("long.yaml", "spacing: 6 m}\nfluid", "spacing: 7 m}\nfluid");
  const Outcome changed = run({"stillground", "run", "long.yaml", "--resume"}, pair.folder);
  CHECK(changed.status == 2);
  CHECK_THAT(changed.err, Contains("scenario"));
  CHECK(fs::exists(pair.folder / "long.h5.spool"));  // hours of work are not thrown away for a slip
}

TEST_CASE("A saved checkpoint is thrown away only by whoever says so") {
  const PairCase pair;
  pair.write_variant("long.yaml", "years: 2", "years: 4");
  pair.write_variant("screened.yaml", "years: 2}", "years: 2, method: screening}");
  REQUIRE(run({"stillground", "run", "long.yaml", "-o", "whole.h5"}, pair.folder).status == 0);
  REQUIRE(run({"stillground", "run", "screened.yaml", "-o", "estimate.h5"}, pair.folder).status == 0);
  const auto interrupt = [&] {
    Process interrupted({"stillground", "run", "long.yaml", "--fresh"}, pair.folder);
    REQUIRE(interrupted.has_said("year   1 of 4"));
    interrupted.send(SIGINT);
    REQUIRE(interrupted.wait().status == 130);
  };
  interrupt();
  const std::string kept = bytes(pair.folder / "long.h5.spool");
  for (const std::string scenario : {"long.yaml", "screened.yaml"}) {
    const Outcome outcome = run({"stillground", "run", scenario, "-o", "long.h5"}, pair.folder);
    CHECK(outcome.status == 2);
    CHECK_THAT(outcome.err, StartsWith("long.h5.spool: keeps the checkpoint of an interrupted run") &&
                                Contains("--resume") && Contains("--fresh"));
    CHECK(bytes(pair.folder / "long.h5.spool") == kept);
    CHECK_FALSE(fs::exists(pair.folder / "long.h5"));
  }
  CHECK(run({"stillground", "run", "long.yaml", "--resume", "--fresh"}, pair.folder).status == 2);
  CHECK(bytes(pair.folder / "long.h5.spool") == kept);

  REQUIRE(run({"stillground", "run", "long.yaml", "--fresh"}, pair.folder).status == 0);
  CHECK(bytes(pair.folder / "long.h5") == bytes(pair.folder / "whole.h5"));
  CHECK_FALSE(fs::exists(pair.folder / "long.h5.spool"));
  interrupt();
  REQUIRE(run({"stillground", "run", "screened.yaml", "-o", "long.h5", "--fresh"}, pair.folder).status == 0);
  CHECK(bytes(pair.folder / "long.h5") == bytes(pair.folder / "estimate.h5"));
  CHECK_FALSE(fs::exists(pair.folder / "long.h5.spool"));
}

TEST_CASE("An older result stays until the new one is complete") {
  const PairCase pair;
  std::ofstream(pair.folder / "pair.h5") << "an older result";
  Process interrupted({"stillground", "run", "pair.yaml"}, pair.folder);
  REQUIRE(interrupted.has_said("year   1 of 2"));
  CHECK(bytes(pair.folder / "pair.h5") == "an older result");
  interrupted.send(SIGINT);
  REQUIRE(interrupted.wait().status == 130);
  CHECK(bytes(pair.folder / "pair.h5") == "an older result");
  REQUIRE(run({"stillground", "run", "pair.yaml", "--resume"}, pair.folder).status == 0);
  CHECK_THAT(bytes(pair.folder / "pair.h5"), StartsWith("\x89HDF"));
}

TEST_CASE("A result name that cannot work is refused before the run") {
  const PairCase pair;
  for (const std::string name : {"-", "no_such_folder/pair.h5", "pair.yaml", "."}) {
    INFO(name);
    const Outcome outcome = run({"stillground", "run", "pair.yaml", "-o", name}, pair.folder);
    CHECK(outcome.status == 2);
    CHECK_THAT(outcome.err, StartsWith("stillground run: -o: "));
  }
  CHECK(left_in(pair.folder).empty());
}

TEST_CASE("A disk that is full fails the run and leaves no result") {
  const PairCase pair;
  // A file size limit stands in for a full disk: writes beyond it fail in the same way.
  const std::string command =
      std::string("trap '' XFSZ; ulimit -f 40; exec ") + PROGRAM_FOLDER + "/stillground run pair.yaml";
  const Outcome outcome = run({"/bin/bash", "-c", command}, pair.folder);
  CHECK(outcome.status == 3);
  CHECK_THAT(outcome.err, Contains("pair.h5"));
  CHECK_FALSE(fs::exists(pair.folder / "pair.h5"));
}
