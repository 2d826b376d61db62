#include "tools/present/plan_labels.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "tools/present/labels.hpp"

using namespace stillground::present;

namespace {

constexpr double radius = 7, size = 16, width = 900;

/// Where the letters of a placed label reach: from its start to its end, a line high.
bool overlap(const Point& a, const std::string& a_text, const Point& b, const std::string& b_text) {
  const bool beside = a.x + text_width(a_text, size) <= b.x || b.x + text_width(b_text, size) <= a.x;
  return !beside && std::abs(a.y - b.y) < size;
}

}  // namespace

TEST_CASE("Labels of a dense plan stand on no other label") {
  std::vector<PlanMark> marks;
  for (int i = 0; i < 40; ++i)
    marks.push_back({{100.0 + 60 * (i % 8), 100.0 + 40 * (i / 8)}, "bore " + std::to_string(i)});
  const auto places = place_labels(marks, radius, size, width);
  int placed = 0;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    if (!places[i]) continue;
    ++placed;
    for (std::size_t j = 0; j < i; ++j) {
      if (places[j]) CHECK_FALSE(overlap(places[i]->at, marks[i].label, places[j]->at, marks[j].label));
    }
  }
  CHECK(placed > 20);
}

TEST_CASE("A label at the picture's right edge goes to the left of its mark") {
  const auto places = place_labels({{{880, 100}, "the last bore"}}, radius, size, width);
  REQUIRE(places.front());
  CHECK(places.front()->at.x + text_width("the last bore", size) <= 880);
}

TEST_CASE("A label without room, or without letters, is left out") {
  const auto places = place_labels({{{50, 50}, std::string(200, 'm')}, {{400, 50}, ""}}, radius, size, width);
  CHECK_FALSE(places[0]);
  CHECK_FALSE(places[1]);
}
