
#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground::testing;

namespace {

Outcome python(std::vector<std::string> words, const std::filesystem::path& folder) {
  words.front() = std::string(PROJECT_FOLDER) + "/tests/cli/" + words.front();
  words.insert(words.begin(), "/usr/bin/python3");
  return run(words, folder);
}

}  // namespace

TEST_CASE("A result opens in programs that never heard of us") {
  const PairCase pair;
  REQUIRE(run({"stillground", "run", "pair.yaml"}, pair.folder).status == 0);

  const Outcome header = run({"/usr/bin/ncdump", "-h", "pair.h5"}, pair.folder);
  CHECK(header.status == 0);
  CHECK_THAT(header.out, Contains("double eft(time)") && Contains("float ground_rise(snapshot, group, z, r)") &&
                             Contains("eft:units = \"degC\"") && Contains("time:calendar = \"noleap\""));

  const Outcome opened = python({"open_in_xarray.py", "pair.h5"}, pair.folder);
  INFO(opened.out << opened.err);
  CHECK(opened.status == 0);
}

TEST_CASE("The hour that eft names is the one that the result's own clock names so") {
  const PairCase pair;
  pair.write_variant("cold.yaml", "eft_min: 0 degC", "eft_min: 9 degC");
  REQUIRE(run({"stillground", "run", "cold.yaml"}, pair.folder).status == 0);
  REQUIRE(run({"stillground", "eft", "cold.h5", "--json"}, pair.folder, "eft.json").status == 0);
  REQUIRE(run({"stillground", "eft", "cold.h5"}, pair.folder, "eft.txt").status == 0);
  const Outcome found = python({"name_an_hour.py", "cold.h5", "eft.json", "eft.txt"}, pair.folder);
  INFO(found.out << found.err);
  CHECK(found.status == 0);
}
