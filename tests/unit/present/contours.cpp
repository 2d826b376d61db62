#include "tools/present/contours.hpp"

#include <cmath>
#include <functional>
#include <numbers>

#include "tests/catch.hpp"

using namespace stillground::present;

namespace {

/// Values at the nodes of [-1, 1] x [-1, 1].
struct Made {
  std::vector<double> x, y, values;
  Made(int nodes, const std::function<double(double, double)>& f) {
    for (int i = 0; i < nodes; ++i) x.push_back(-1 + 2.0 * i / (nodes - 1));
    y = x;
    for (const double b : y) {
      for (const double a : x) values.push_back(f(a, b));
    }
  }
  Field field() const { return {x, y, values}; }
};

/// Shoelace: positive about what lies at the left of a loop.
double area(const Loop& loop) {
  double twice = 0;
  for (std::size_t i = 0; i < loop.points.size(); ++i) {
    const Point &a = loop.points[i], &b = loop.points[(i + 1) % loop.points.size()];
    twice += a.x * b.y - b.x * a.y;
  }
  return twice / 2;
}

double sum_of_areas(const std::vector<Loop>& loops) {
  double sum = 0;
  for (const Loop& loop : loops) sum += area(loop);
  return sum;
}

}  // namespace

TEST_CASE("The region above a level of a cone is a disc, and its line a circle") {
  const Made cone(101, [](double x, double y) { return -std::hypot(x, y); });
  const auto loops = loops_above(cone.field(), -0.6);
  REQUIRE(loops.size() == 1);
  CHECK(area(loops[0]) == Approx(std::numbers::pi * 0.36).epsilon(1e-3));  // chords of a mesh of 0.02
  const auto lines = level_lines(loops);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].front().x == lines[0].back().x);
  for (const Point& p : lines[0]) CHECK(std::hypot(p.x, p.y) == Approx(0.6).epsilon(1e-3));
}

TEST_CASE("A hole in the region runs the other way round") {
  const Made ring(101, [](double x, double y) { return -std::abs(std::hypot(x, y) - 0.5); });
  const auto loops = loops_above(ring.field(), -0.2);
  REQUIRE(loops.size() == 2);
  CHECK(sum_of_areas(loops) == Approx(std::numbers::pi * (0.49 - 0.09)).epsilon(2e-3));
}

TEST_CASE("A region that meets the edge closes along it, and its line does not") {
  const Made slope(11, [](double x, double) { return x; });
  const auto loops = loops_above(slope.field(), 0.25);
  CHECK(sum_of_areas(loops) == Approx(0.75 * 2));
  const auto lines = level_lines(loops);
  REQUIRE(lines.size() == 1);
  for (const Point& p : lines[0]) CHECK(p.x == Approx(0.25));
  CHECK(std::abs(lines[0].front().y - lines[0].back().y) == Approx(2));
}

TEST_CASE("All above is the whole ground without a line, all below nothing") {
  const Made flat(5, [](double, double) { return 3.0; });
  CHECK(sum_of_areas(loops_above(flat.field(), 2)) == Approx(4));
  CHECK(level_lines(loops_above(flat.field(), 2)).empty());
  CHECK(loops_above(flat.field(), 4).empty());
}

TEST_CASE("At a saddle the cell's mean says what hangs together") {
  const std::vector<double> xy = {0, 1};
  const std::vector<double> high_middle = {2, 0, 0, 2};
  CHECK(loops_above({xy, xy, high_middle}, 0.5).size() == 1);  // mean 1: the two high corners are one region
  CHECK(loops_above({xy, xy, high_middle}, 1.5).size() == 2);
}
