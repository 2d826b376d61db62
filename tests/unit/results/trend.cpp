#include "tools/results/trend.hpp"

#include <cmath>

#include "tests/catch.hpp"

using namespace stillground::results;

namespace {

std::vector<double> line(int years, double first, double per_year) {
  std::vector<double> values;
  for (int y = 0; y < years; ++y) values.push_back(first + per_year * y);
  return values;
}

}  // namespace

TEST_CASE("A straight line's trend is its slope") {
  CHECK(slope_per_decade(line(10, 12, 0.031)) == Approx(0.31).epsilon(1e-12));
  CHECK(slope_per_decade(line(2, 12, -0.4)) == Approx(-4).epsilon(1e-12));
}

// By hand: x = -1.5 .. 1.5, y = 1, 3, 2, 4: sum xy = 4, sum xx = 5, slope 0.8 a year.
TEST_CASE("Scattered means get the least-squares slope") {
  CHECK(slope_per_decade(std::vector<double>{1, 3, 2, 4}) == Approx(8).epsilon(1e-12));
}

TEST_CASE("Only the last ten years make the trend") {
  std::vector<double> values = line(10, 0, 1);
  for (const double v : line(10, 9, 0.02)) values.push_back(v);
  CHECK(trends(values).back() == Approx(0.2).epsilon(1e-9));
  CHECK(trends(values)[9] == Approx(10).epsilon(1e-12));
}

TEST_CASE("One year has no trend") {
  CHECK(std::isnan(slope_per_decade(line(1, 12, 0))));
  CHECK(std::isnan(trends(line(3, 12, 0.1)).front()));
}

TEST_CASE("The ground is level from the year on after which no trend is steep") {
  CHECK(level_from(std::vector<double>{NAN, 3, 0.4, 0.049, -0.02}) == 4);
  CHECK(level_from(std::vector<double>{NAN, 3, 0.4, 0.05}) == std::nullopt);
  CHECK(level_from(std::vector<double>{NAN, 0.0, 0.0}) == 2);
  CHECK(level_from(std::vector<double>{NAN}) == std::nullopt);
}

TEST_CASE("A trend that passes through zero does not level off") {
  CHECK(level_from(std::vector<double>{NAN, 2, 0.03, -0.8, -1}) == std::nullopt);
}
