#include <fmt/format.h>

#include <fstream>
#include <iterator>

#include "tests/cases/cases.hpp"
#include "tests/catch.hpp"

using namespace stillground;
using stillground::testing::Contains;

TEST_CASE("The README of the example cases shows each scenario's plan and the figures of expected.csv") {
  std::ifstream file(cases::folder / "README.md", std::ios::binary);
  const std::string readme{std::istreambuf_iterator<char>(file), {}};
  for (const auto& [name, line] : cases::read_expected()) {
    CHECK_THAT(readme, Contains(fmt::format("<img src=\"plans/{0}.svg\" width=\"240\"> | [{0}]({0}.yaml) | ", name)));
    CHECK_THAT(readme, Contains(fmt::format(" | {} | {:.0f} | {:.2f} | {:.2f} | {:.2f} | {:.2f} |", line.bores,
                                            line.to_drill, line.first.eft_least, line.last.eft_least,
                                            line.first.eft_most, line.last.eft_most)));
  }
}
