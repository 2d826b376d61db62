#include <algorithm>
#include <regex>

#include "engine/assembly/assembly.hpp"
#include "engine/config/keys.hpp"
#include "tests/catch.hpp"
#include "tests/unit/config/edited.hpp"

using namespace stillground;

namespace {

/// Whether an expected message names the key: its whole path, before a colon or at the end. A key of
/// one building among several is the key of `loads`.
bool names(const std::string& expected, std::string_view path) {
  std::string plain;
  for (const char c : expected) {
    if (c != '\\') plain += c;
  }
  plain = std::regex_replace(plain, std::regex(R"(\[\d+\])"), "[]");
  plain = std::regex_replace(plain, std::regex(R"(loads\.buildings\[\]\.)"), "loads.");
  plain = std::regex_replace(plain, std::regex(R"(limits\.\w+\.)"), "limits.*.");
  for (std::size_t at = plain.find(path); at != plain.npos; at = plain.find(path, at + 1)) {
    const std::size_t end = at + path.size();
    const bool begins = at == 0 || plain[at - 1] == ' ';
    if (begins && (end == plain.size() || plain[end] == ':')) return true;
  }
  return false;
}

}  // namespace

TEST_CASE("Every key of the table has a broken scenario whose message names it", "[config]") {
  const auto cases = testing::broken_cases();
  for (const config::Key& row : config::keys()) {
    CAPTURE(row.path);
    CHECK(std::any_of(cases.begin(), cases.end(), [&](const auto& one) { return names(one.expected, row.path); }));
  }
}

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
      assembly::assemble(scenario);  // some things only the physics can judge
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
