#include "tools/present/plan_labels.hpp"

#include <cmath>

#include "tests/catch.hpp"
#include "tools/present/labels.hpp"

using namespace stillground::present;

namespace {

constexpr double radius = 7, size = 16, width = 900;

/// Where the letters of a placed label reach: from its start to its end, a line high.
bool overlap(const LabelPlace& a, const LabelPlace& b) {
  const bool beside = a.at.x + text_width(a.text, size) < b.at.x || b.at.x + text_width(b.text, size) < a.at.x;
  return !beside && std::abs(a.at.y - b.at.y) < size;
}

}  // namespace

TEST_CASE("Labels of a dense plan stand on no other label") {
  std::vector<PlanMark> marks;
  for (int i = 0; i < 40; ++i)
    marks.push_back({{100.0 + 60 * (i % 8), 100.0 + 40 * (i / 8)}, {"bore " + std::to_string(i)}});
  const auto places = place_labels(marks, radius, size, width);
  int placed = 0;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    if (!places[i]) continue;
    ++placed;
    for (std::size_t j = 0; j < i; ++j) {
      if (places[j]) CHECK_FALSE(overlap(*places[i], *places[j]));
    }
  }
  CHECK(placed > 20);
}

TEST_CASE("A label at the picture's right edge goes to the left of its mark") {
  const auto places = place_labels({{{880, 100}, {"the last bore"}}}, radius, size, width);
  REQUIRE(places.front());
  CHECK(places.front()->at.x + text_width("the last bore", size) <= 880);
}

TEST_CASE("A label without room, or without letters, is left out") {
  const auto places = place_labels({{{50, 50}, {std::string(200, 'm')}}, {{400, 50}, {}}}, radius, size, width);
  CHECK_FALSE(places[0]);
  CHECK_FALSE(places[1]);
}

TEST_CASE("Where the long label has no room the short one stands") {
  const auto places = place_labels({{{450, 100}, {std::string(200, 'm'), "7"}}}, radius, size, width);
  REQUIRE(places.front());
  CHECK(places.front()->text == "7");
}

TEST_CASE("A label keeps off what is taken already") {
  const auto free = place_labels({{{450, 100}, {"7"}}}, radius, size, width);
  const auto places = place_labels({{{450, 100}, {"7"}}}, radius, size, width, {{450, 0, 900, 200}});
  REQUIRE((free.front() && places.front()));
  CHECK(free.front()->at.x > 450);
  CHECK(places.front()->at.x + text_width("7", size) <= 450);
}

TEST_CASE("A mark that ends a row gets its label before all others, on the way out of the row") {
  std::vector<PlanMark> marks;
  for (int i = 0; i < 30; ++i) marks.push_back({{100.0 + 12 * i, 100}, {std::to_string(i + 1)}});
  marks.front().away = Point{-1, 0};
  marks.back().away = Point{1, 0};
  const auto places = place_labels(marks, 4, 11, width);
  REQUIRE((places.front() && places.back()));
  CHECK(places.front()->at.x + text_width("1", 11) < 100);
  CHECK(places.back()->at.x > 100 + 12 * 29);
}
