#include <catch2/catch.hpp>

#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground::testing;
using Catch::Contains;

TEST_CASE("A result opens in programs that never heard of us") {
  const PairCase pair;
  REQUIRE(run({"stillground", "run", "pair.yaml"}, pair.folder).status == 0);

  const Outcome header = run({"/usr/bin/ncdump", "-h", "pair.h5"}, pair.folder);
  CHECK(header.status == 0);
  CHECK_THAT(header.out, Contains("double eft(time)") && Contains("float ground_rise(snapshot, group, z, r)") &&
                             Contains("eft:units = \"degC\"") && Contains("time:calendar = \"noleap\""));

  const std::string script = std::string(PROJECT_FOLDER) + "/tests/cli/open_in_xarray.py";
  const Outcome opened = run({"/usr/bin/python3", script, "pair.h5"}, pair.folder);
  INFO(opened.out << opened.err);
  CHECK(opened.status == 0);
}
