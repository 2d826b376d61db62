#include <regex>

#include "tests/catch.hpp"
#include "tests/cli/broken/cases.hpp"
#include "tests/cli/command.hpp"
#include "tests/unit/base/scratch.hpp"

using namespace stillground::testing;

namespace {

std::size_t files_in(const fs::path& folder) {
  return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder), {}));
}

/// One line, the expected words, status 2, no new file.
void check_refusal(const std::string& verb, const BrokenCase& broken, const fs::path& folder) {
  INFO("stillground " << verb << ": " << broken.name);
  const std::size_t before = files_in(folder);
  const Outcome outcome = run({"stillground", verb, "site.yaml"}, folder);
  CHECK(outcome.status == 2);
  CHECK(outcome.out.empty());
  INFO("expected " << broken.expected << "\n  found  " << outcome.err);
  CHECK(std::regex_search(outcome.err, std::regex(broken.expected)));
  CHECK(files_in(folder) == before);
}

}  // namespace

TEST_CASE("check and run refuse every broken scenario at its place, and leave nothing behind") {
  const auto cases = broken_cases();
  REQUIRE(cases.size() >= 40);
  for (const BrokenCase& broken : cases) {
    const Scratch scratch;
    make_broken(broken, scratch.folder);
    check_refusal("check", broken, scratch.folder);
    check_refusal("run", broken, scratch.folder);
  }
}

TEST_CASE("The scenario from which the broken ones are made is good") {
  const Scratch scratch;
  make_broken({"good", {}, ""}, scratch.folder);
  const Outcome outcome = run({"stillground", "check", "site.yaml"}, scratch.folder);
  CHECK(outcome.status == 0);
  CHECK(outcome.err.empty());
}
