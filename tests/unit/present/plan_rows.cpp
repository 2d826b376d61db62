#include "tools/present/plan_rows.hpp"

#include <cmath>

#include "tests/catch.hpp"

using namespace stillground::present;

namespace {

std::vector<std::size_t> ends_of(const std::vector<Point>& points) {
  std::vector<std::size_t> ends;
  const auto ways = row_ends(points);
  for (std::size_t i = 0; i < ways.size(); ++i) {
    if (ways[i]) ends.push_back(i);
  }
  return ends;
}

}  // namespace

TEST_CASE("The ends of a grid's rows are its first and last columns, and lead out of it") {
  std::vector<Point> grid;
  for (int row = 0; row < 3; ++row) {
    for (int column = 0; column < 4; ++column) grid.push_back({6.0 * column, 6.0 * row});
  }
  CHECK(ends_of(grid) == std::vector<std::size_t>{0, 3, 4, 7, 8, 11});
  const auto ways = row_ends(grid);
  CHECK(ways[4]->x == -1);
  CHECK(ways[7]->x == 1);
}

TEST_CASE("A gap in a row, as a house leaves it, ends the row on both its sides") {
  CHECK(ends_of({{0, 0}, {6, 0}, {12, 0}, {30, 0}, {36, 0}, {42, 0}}) == std::vector<std::size_t>{0, 2, 3, 5});
}

TEST_CASE("A row may lead any way, as on a turned plot or a fan's ray") {
  const auto ways = row_ends({{0, 0}, {3, 4}, {6, 8}, {6, 0}, {9, 4}, {12, 8}});
  CHECK(ends_of({{0, 0}, {3, 4}, {6, 8}, {6, 0}, {9, 4}, {12, 8}}) == std::vector<std::size_t>{0, 2, 3, 5});
  CHECK(ways[2]->x == Approx(0.6));
  CHECK(ways[3]->y == Approx(-0.8));
}

TEST_CASE("A lone point ends its row") {
  CHECK(ends_of({{5, 5}}) == std::vector<std::size_t>{0});
  CHECK(row_ends({}).empty());
}

TEST_CASE("Round a corner, and along a ring, the way out leads to the outer side") {
  const auto corner = row_ends({{0, 0}, {6, 0}, {12, 0}, {12, 6}, {12, 12}});
  REQUIRE(corner[2]);
  CHECK(corner[2]->x == Approx(std::sqrt(0.5)));
  CHECK(corner[2]->y == Approx(-std::sqrt(0.5)));
  const auto ring = row_ends({{10, 0}, {0, 10}, {-10, 0}, {0, -10}});
  REQUIRE((ring[0] && ring[1]));
  CHECK(ring[0]->x == Approx(1));
  CHECK(ring[1]->x == Approx(0).margin(1e-12));
  CHECK(ring[1]->y == Approx(1));
}
