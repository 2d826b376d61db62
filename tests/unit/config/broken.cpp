#include <catch2/catch.hpp>
#include <regex>

#include "engine/run/assembly.hpp"
#include "tests/unit/config/edited.hpp"

using namespace stillground;

TEST_CASE("Every broken scenario is refused at its place, with what was found and what is allowed", "[config]") {
  const auto cases = testing::broken_cases();
  CHECK(cases.size() >= 60);
  for (const auto& broken : cases) {
    CAPTURE(broken.name);
    const testing::Scratch scratch;
    const auto site = testing::make_broken(broken, scratch.folder);
    std::string message = "accepted";
    try {
      const model::Scenario scenario = config::read_scenario(site);
      run::assemble(scenario);  // some things only the physics can judge
    } catch (const InputError& error) {
      message = error.what();
    }
    CAPTURE(message, broken.expected);
    CHECK(std::regex_search(message, std::regex(broken.expected)));
  }
}

TEST_CASE("The scenario that the broken ones are made from is good", "[config]") {
  CHECK(testing::read_edited({}).title == "Six bores behind the mill");
}
