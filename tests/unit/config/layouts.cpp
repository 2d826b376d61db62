#include <numbers>

#include "tests/catch.hpp"
#include "tests/unit/config/edited.hpp"

using namespace stillground;
using testing::grid;

namespace {

template <class Shape>
Shape shape_of(const std::string& text, const std::vector<std::string>& files = {}) {
  std::vector<std::string> edits{"site " + grid + " => " + text};
  edits.insert(edits.end(), files.begin(), files.end());
  return std::get<Shape>(testing::read_edited(edits).layout);
}

}  // namespace

TEST_CASE("Each drawn layout is read with its numbers", "[config]") {
  CHECK(shape_of<model::Staggered>("staggered: {rows: 3, columns: 2, spacing: 20 ft}").spacing == Approx(6.096));
  CHECK(shape_of<model::Line>("line: {bores: 4, spacing: 6 m}").bores == 4);
  CHECK(shape_of<model::LShape>("l_shape: {along_x: 4, along_y: 3, spacing: 6 m}").along_y == 3);
  CHECK(shape_of<model::UShape>("u_shape: {along_x: 4, along_y: 3, spacing: 6 m}").along_x == 4);
  CHECK(shape_of<model::Ring>("ring: {bores: 8, spacing: 5 m}").spacing == 5);
  const auto fan = shape_of<model::Fan>("fan: {rays: 4, bores_per_ray: 2, first: 5 m, spacing: 6 m, opening: 90}");
  CHECK(fan.opening == Approx(std::numbers::pi / 2));
  CHECK(fan.first == 5);
  CHECK(shape_of<model::Fan>("fan: {rays: 4, bores_per_ray: 1, first: 5 m}").opening == Approx(2 * std::numbers::pi));
}

TEST_CASE("A plot takes its corners and what is kept clear from files, each its setback", "[config]") {
  const auto plot = shape_of<model::Plot>(
      "plot:\\n    outline: plot.csv\\n    setback: 3 m\\n    spacing: 6 m\\n    pattern: staggered\\n    angle: 45\\n"
      "    keep_clear:\\n      - {outline: house.csv, setback: 5 m}\\n      - {outline: house.csv}",
      {"file plot.csv = x [m],y [m]\\n0,0\\n40,0\\n40,30\\n0,30\\n",
       "file house.csv = x [ft],y [m]\\n10,3\\n20,3\\n20,9\\n"});
  CHECK(plot.land.outline.size() == 4);
  CHECK(plot.land.setback == 3);
  CHECK(plot.pattern == model::Plot::Pattern::staggered);
  CHECK(plot.angle == Approx(std::numbers::pi / 4));
  REQUIRE(plot.land.keep_clear.size() == 2);
  CHECK(plot.land.keep_clear[0].outline[1].x == Approx(6.096));
  CHECK(plot.land.keep_clear[0].setback == 5);
  CHECK(plot.land.keep_clear[1].setback == 3);
}
