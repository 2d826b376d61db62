#include <map>
#include <regex>
#include <sstream>

#include "engine/units/quantity.hpp"
#include "tests/catch.hpp"
#include "tests/cli/broken/cases.hpp"

using namespace stillground;
using units::Dimension;

namespace {

/// The list at the head of the reference scenario: units by what they measure, remarks in brackets left out.
std::map<std::string, std::vector<std::string>> written_units() {
  static const std::regex line(R"(#   (an? [a-z ]+): (.+))"), remark(R"( \([\w ]{4,}\))");
  std::istringstream text(testing::slurp(std::filesystem::path(PROJECT_FOLDER) / "configs/reference.yaml"));
  std::map<std::string, std::vector<std::string>> units;
  std::smatch match;
  for (std::string row; std::getline(text, row) && row.starts_with('#');) {
    if (!std::regex_match(row, match, line)) continue;
    std::istringstream names(std::regex_replace(match[2].str(), remark, ""));
    for (std::string name; std::getline(names >> std::ws, name, ',');) units[match[1]].push_back(name);
  }
  return units;
}

std::vector<Dimension> dimensions() {
  std::vector<Dimension> all;
  for (int i = 0; i <= static_cast<int>(Dimension::fraction); ++i) all.push_back(static_cast<Dimension>(i));
  return all;
}

}  // namespace

TEST_CASE("The reference lists units of every dimension, and each is read in its own", "[config]") {
  const auto listed = written_units();
  for (const Dimension dimension : dimensions()) {
    const std::string name(units::facts(dimension).name);
    CAPTURE(name);
    REQUIRE(listed.count(name) == 1);
    for (const std::string& unit : listed.at(name)) {
      CAPTURE(unit);
      if (unit == "or no unit at all") {
        CHECK(units::to_si("1", dimension, {}) == 1);
      } else {
        CHECK_NOTHROW(units::to_si("1 " + unit, dimension, {}));
      }
    }
  }
  CHECK(listed.size() == dimensions().size());
}

TEST_CASE("The reference lists the units in which its examples are written", "[config]") {
  const auto listed = written_units();
  static const std::regex example(R"-("[\d.]+ ([^"]+)")-");
  int seen = 0;
  for (const Dimension dimension : dimensions()) {
    const std::string text(units::facts(dimension).examples);
    for (std::sregex_iterator at(text.begin(), text.end(), example), end; at != end; ++at, ++seen) {
      const auto& names = listed.at(std::string(units::facts(dimension).name));
      CAPTURE(text);
      CHECK(std::find(names.begin(), names.end(), (*at)[1].str()) != names.end());
    }
  }
  CHECK(seen >= 30);
}
