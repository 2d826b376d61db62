#include "tools/present/labels.hpp"

#include "tests/catch.hpp"

using namespace stillground::present;

TEST_CASE("Labels with room stay where they wish to be") {
  CHECK(spread({{100, 20}, {40, 20}}, 0, 200) == std::vector<double>{100, 40});
}

TEST_CASE("Labels at one place part evenly") {
  CHECK(spread({{100, 20}, {100, 20}}, 0, 200) == std::vector<double>{90, 110});
}

TEST_CASE("Crowded labels keep their order and never overlap") {
  const std::vector<double> centres = spread({{52, 24}, {50, 45}, {51, 24}, {160, 24}}, 0, 200);
  CHECK(centres[2] - centres[1] >= Approx((45 + 24) / 2.0));
  CHECK(centres[0] - centres[2] >= Approx(24));
  CHECK(centres[3] == 160);
}

TEST_CASE("Labels at the edge stay inside") {
  const std::vector<double> centres = spread({{2, 20}, {199, 20}, {200, 20}}, 0, 200);
  CHECK(centres == std::vector<double>{10, 170, 190});
}

TEST_CASE("A text that is too long ends in an ellipsis and fits") {
  const std::string name = "library-åäö-seven-metres-and-a-half";
  const std::string shorter = fitted(name, 17, 150);
  CHECK(text_width(shorter, 17) <= 150);
  CHECK(shorter.substr(0, 7) == "library");
  CHECK(shorter.substr(shorter.size() - 3) == "…");
  CHECK(fitted("five", 17, 150) == "five");
}

TEST_CASE("Lines within a room are no wider than it") {
  const std::vector<std::string> lines = lines_within("The ground block warms by 1.98 K per decade", 18, 200);
  REQUIRE(lines.size() > 1);
  for (const std::string& line : lines) CHECK(text_width(line, 18) <= 200);
}
