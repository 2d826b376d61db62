
#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground::testing;

TEST_CASE("A scenario where a result is read, and the reverse, is called what it is") {
  const PairCase pair;
  for (std::vector<std::string> words : {std::vector<std::string>{"eft"},
                                         {"drift"},
                                         {"compare"},
                                         {"slice", "--boundary"},
                                         {"report", "-o", "page.html"}}) {
    INFO(words.front());
    words.insert(words.begin(), "stillground");
    words.emplace_back("pair.yaml");
    const Outcome outcome = run(words, pair.folder);
    CHECK(outcome.status == 2);
    CHECK_THAT(outcome.err, StartsWith("pair.yaml: this is a scenario, not a result"));
  }
  REQUIRE(run({"stillground", "run", "pair.yaml"}, pair.folder).status == 0);
  for (const std::string verb : {"plan", "check", "run", "sheet"}) {
    INFO(verb);
    const Outcome outcome = run({"stillground", verb, "pair.h5"}, pair.folder);
    CHECK(outcome.status == 2);
    CHECK_THAT(outcome.err, StartsWith("pair.h5: this is a result, not a scenario"));
  }
}
