#include "engine/field/layout.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/field/plot.hpp"
#include "tests/catch.hpp"

using namespace stillground;

namespace {

std::vector<model::BoreSite> sites_of(const model::Layout& layout) {
  return field::sites(layout, 1.5, 100);
}

double nearest(const std::vector<model::BoreSite>& bores) {
  const auto all = field::nearest_distances(bores);
  return *std::min_element(all.begin(), all.end());
}

model::Outline rectangle(double width, double height) {
  return {{0, 0}, {width, 0}, {width, height}, {0, height}};
}

model::Plot plot_of(const model::Outline& outline, double setback, double spacing) {
  model::Plot plot;
  plot.land.outline = outline;
  plot.land.setback = setback;
  plot.spacing = spacing;
  return plot;
}

}  // namespace

TEST_CASE("In staggered rows six neighbours stand at one spacing", "[field]") {
  const auto bores = sites_of(model::Staggered{5, 5, 6});
  REQUIRE(bores.size() == 25);
  const model::BoreSite& middle = bores[12];
  const auto near = std::count_if(bores.begin(), bores.end(),
                                  [&](const auto& bore) { return std::abs(field::distance(bore, middle) - 6) < 1e-9; });
  CHECK(near == 6);
  CHECK(nearest(bores) == Approx(6).epsilon(1e-12));
}

TEST_CASE("An L and a U count their corner bores once", "[field]") {
  const auto l = sites_of(model::LShape{4, 3, 6});
  CHECK(l.size() == 6);
  const auto u = sites_of(model::UShape{4, 3, 6});
  CHECK(u.size() == 8);
  CHECK(u.back().x == 18);
  CHECK(u.back().y == 12);
  CHECK(nearest(l) == 6);
  CHECK(nearest(u) == 6);
}

TEST_CASE("A line is a row of bores", "[field]") {
  const auto bores = sites_of(model::Line{4, 7});
  REQUIRE(bores.size() == 4);
  CHECK(bores[3].x == 21);
  CHECK(bores[3].y == 0);
  CHECK(bores[3].depth == 100);
}

TEST_CASE("On a ring neighbours stand at the spacing, straight across, and each sees the same field", "[field]") {
  const auto bores = sites_of(model::Ring{7, 6});
  REQUIRE(bores.size() == 7);
  for (const double d : field::nearest_distances(bores)) CHECK(d == Approx(6).epsilon(1e-12));
}

TEST_CASE("A fan's rays part its opening, and all round no ray is drilled twice", "[field]") {
  const auto quarter = sites_of(model::Fan{3, 2, 5, 6, std::numbers::pi / 2});
  REQUIRE(quarter.size() == 6);
  CHECK(quarter[1].x == 11);
  CHECK(quarter[5].x == Approx(0).margin(1e-12));
  CHECK(quarter[5].y == Approx(11));
  const auto round = sites_of(model::Fan{4, 1, 5, 6, 2 * std::numbers::pi});
  CHECK(nearest(round) == Approx(5 * std::sqrt(2.0)));
}

TEST_CASE("A rectangle is filled to its setback on all sides", "[field]") {
  // 18 m between the setbacks: four bores at 6 m, in both directions.
  CHECK(field::fill(plot_of(rectangle(24, 24), 3, 6)).size() == 16);
  // A hand's breadth less, and a row is lost.
  CHECK(field::fill(plot_of(rectangle(24, 23.9), 3, 6)).size() == 12);
}

TEST_CASE("No bore of a filled plot stands nearer than its setbacks, nor outside, nor in what is kept clear",
          "[field]") {
  model::Plot plot = plot_of({{0, 0}, {60, 5}, {70, 40}, {30, 30}, {10, 60}}, 2, 5.5);
  plot.land.keep_clear.push_back({{{25, 10}, {35, 10}, {35, 20}, {25, 20}}, 4});
  for (const auto pattern : {model::Plot::Pattern::square, model::Plot::Pattern::staggered}) {
    plot.pattern = pattern;
    plot.angle = 0.3;
    const auto points = field::fill(plot);
    REQUIRE(points.size() > 20);
    double nearest_pair = 1e9;
    for (std::size_t i = 0; i < points.size(); ++i) {
      CHECK(field::inside(plot.land.outline, points[i]));
      CHECK(field::distance_to(plot.land.outline, points[i]) >= 2 - 1e-6);
      CHECK(field::distance_to(plot.land.keep_clear[0].outline, points[i]) >= 4 - 1e-6);
      CHECK_FALSE(field::inside(plot.land.keep_clear[0].outline, points[i]));
      for (std::size_t j = 0; j < i; ++j) {
        nearest_pair = std::min(nearest_pair, std::hypot(points[i].x - points[j].x, points[i].y - points[j].y));
      }
    }
    CHECK(nearest_pair == Approx(5.5));
  }
}

TEST_CASE("Staggered rows put more bores on a plot than square ones", "[field]") {
  model::Plot plot = plot_of(rectangle(100, 100), 3, 6);
  const auto square = field::fill(plot).size();
  plot.pattern = model::Plot::Pattern::staggered;
  CHECK(field::fill(plot).size() > square);
}

TEST_CASE("The area of an outline does not depend on the way round", "[field]") {
  model::Outline l{{0, 0}, {30, 0}, {30, 10}, {10, 10}, {10, 20}, {0, 20}};
  CHECK(field::area(l) == 400);
  std::reverse(l.begin(), l.end());
  CHECK(field::area(l) == 400);
}

TEST_CASE("A plot in the coordinates of a national grid holds the same bores, and as much land, as in local ones",
          "[field]") {
  const model::PlanPoint origin{32456789.123, 5634505.257};
  // Four bores fit exactly between the setbacks: round-off alone would lose a row.
  const double setback = 3.0131, spacing = 5.5173, side = 2 * setback + 3 * spacing;
  model::Plot here = plot_of(rectangle(side, side), setback, spacing);
  here.land.keep_clear.push_back({{{10, 10}, {11, 10}, {11, 11}, {10, 11}}, 1});
  here.angle = GENERATE(0.0, 0.4, std::numbers::pi / 2);
  model::Plot there = here;
  for (model::PlanPoint& p : there.land.outline) p = {p.x + origin.x, p.y + origin.y};
  for (model::PlanPoint& p : there.land.keep_clear[0].outline) p = {p.x + origin.x, p.y + origin.y};
  const auto local = field::fill(here), national = field::fill(there);
  REQUIRE(local.size() > 9);
  REQUIRE(national.size() == local.size());
  for (std::size_t i = 0; i < local.size(); ++i) {
    CHECK(national[i].x - origin.x == Approx(local[i].x).margin(1e-7));
    CHECK(national[i].y - origin.y == Approx(local[i].y).margin(1e-7));
  }
  CHECK(field::area(there.land.outline) == Approx(side * side).margin(1e-6));  // the corners' last digits hold 4e-9 m
}
