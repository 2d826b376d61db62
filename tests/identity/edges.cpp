#include <catch2/catch.hpp>

#include "tests/march_scenario.hpp"

using namespace stillground;

// numerics.md 1: the balance cannot show that the outer edges are far enough, so they are moved. Marked slow.
TEST_CASE("Doubling the outer radius or the depth below the toe changes the EFT by less than a thousandth of a kelvin",
          "[slow]") {
  auto s = test::scenario(2, 2, 12);
  s.loads = model::ConstantGroundLoad{-9000};
  s.heat_pump.reset();
  s.run.step = 3600;
  const run::Assembly as_chosen = run::assemble(s);
  const double radius = as_chosen.problem.grid.r_faces.back();
  const double margin = as_chosen.problem.grid.z_faces.back() - 91.8;
  const long hours = 12 * hours_per_year;
  // The same rings and layers within; the edge farther out.
  s.run.grid.radial_cells = static_cast<int>(as_chosen.problem.nr());
  s.run.grid.outer_radius = radius;
  const auto chosen = test::march(s, hours);
  auto wider = s;
  const double ratio = as_chosen.problem.grid.r_faces[1] / as_chosen.problem.grid.r_faces[0];
  const int more = static_cast<int>(std::ceil(std::log(2.0) / std::log(ratio)));
  wider.run.grid.radial_cells += more;
  wider.run.grid.outer_radius = radius * std::pow(ratio, more);
  CHECK(test::largest_difference(chosen, test::march(wider, hours)) < 0.001);
  auto deeper = s;
  deeper.run.grid.bottom_margin = 2 * margin;
  CHECK(test::largest_difference(chosen, test::march(deeper, hours)) < 0.001);
}
