#include "tools/results/plan.hpp"

#include <cmath>
#include <numbers>

#include "engine/base/errors.hpp"
#include "tests/catch.hpp"

using namespace stillground;
using namespace stillground::results;

namespace {

std::vector<record::BoreRow> grid(int rows, int columns, double spacing) {
  std::vector<record::BoreRow> bores;
  for (int i = 0; i < rows; ++i) {
    for (int j = 0; j < columns; ++j) bores.push_back({j * spacing, i * spacing, 1.5, 100, 0.075, 0, 0});
  }
  return bores;
}

constexpr double pi = std::numbers::pi;

}  // namespace

TEST_CASE("The hull of a filled square is its four corners") {
  std::vector<PlanPoint> points;
  for (const record::BoreRow& bore : grid(4, 4, 1)) points.push_back({bore.x, bore.y});
  CHECK(convex_hull(points).size() == 4);
  CHECK(WidenedHull{convex_hull(points), 0}.area() == Approx(9));
}

TEST_CASE("A hull goes round counter-clockwise whatever the points' order") {
  CHECK(WidenedHull{convex_hull({{0, 0}, {4, 0}, {0, 3}}), 0}.area() == Approx(6));
  CHECK(WidenedHull{convex_hull({{0, 3}, {0, 0}, {4, 0}, {1, 1}}), 0}.area() == Approx(6));
}

// Area of a convex body with all that is within w of it: A + P w + pi w^2 (Steiner 1840).
TEST_CASE("A field's land is its hull and a strip with round corners about it") {
  const WidenedHull block = ground_block(grid(3, 4, 6));
  CHECK(block.margin == Approx(3));
  CHECK(block.area() == Approx(18 * 12 + 60 * 3 + pi * 9));
}

TEST_CASE("Bores on a line stand in a strip with two round ends") {
  const WidenedHull block =
      ground_block({{0, 0, 1, 90, 0.07, 0, 0}, {3, 4, 1, 90, 0.07, 0, 0}, {6, 8, 1, 90, 0.07, 0, 0}});
  CHECK(block.corners.size() == 2);
  CHECK(block.area() == Approx(10 * 5 + pi * 2.5 * 2.5));
}

TEST_CASE("A lone bore stands in a disc of three metres") {
  CHECK(ground_block(grid(1, 1, 6)).area() == Approx(9 * pi));
}

TEST_CASE("The margin is half the median distance, which one far bore does not change") {
  auto bores = grid(2, 2, 5);
  bores.push_back({100, 0, 1.5, 100, 0.075, 0, 0});
  CHECK(ground_block(bores).margin == Approx(2.5));
}

TEST_CASE("Bores at one place are refused") {
  CHECK_THROWS_AS(ground_block({{0, 0, 1, 90, 0.07, 0, 0}, {0, 0, 1, 90, 0.07, 0, 0}}), InputError);
}

TEST_CASE("A grid has a mid-point on every side between two bores") {
  CHECK(mid_points(grid(3, 4, 6)).size() == 3 * 3 + 2 * 4);
}

TEST_CASE("Surveyed places that miss the grid by a hand keep their mid-points") {
  auto bores = grid(2, 2, 6);
  bores[3].x += 0.02;
  CHECK(mid_points(bores).size() == 4);
}

TEST_CASE("A lone bore has no mid-points") {
  CHECK(mid_points(grid(1, 1, 6)).empty());
}

TEST_CASE("A far bore pairs with its own nearest neighbour only") {
  const auto points = mid_points({{0, 0, 1, 90, 0.07, 0, 0}, {4, 0, 1, 90, 0.07, 0, 0}, {14, 0, 1, 90, 0.07, 0, 0}});
  REQUIRE(points.size() == 2);
  CHECK(points[0].x == Approx(2));
  CHECK(points[1].x == Approx(9));
}
