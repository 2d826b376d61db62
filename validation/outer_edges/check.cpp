// Source: none needed: the same ground cut off farther out
// Tier:      full
#include <fmt/format.h>

#include <cmath>

#include "tests/march_scenario.hpp"
#include "validation/rig/claim.hpp"

using namespace stillground;

namespace {

constexpr int years = 12;

/// One heat all the time, so that nothing hides a drift.
model::Scenario drawn_upon() {
  auto s = test::scenario(2, 2, years);
  s.loads = model::ConstantGroundLoad{-9000};
  s.heat_pump.reset();
  s.run.step = 3600;
  return s;
}

/// Largest difference of the EFT up to the end of each of the years told.
void compare(validation::Claim& claim, const std::vector<record::Hour>& chosen,
             const std::vector<record::Hour>& moved) {
  for (const int year : {1, 5, years}) {
    const auto until = static_cast<std::ptrdiff_t>(year) * hours_per_year;
    claim.absolute(
        fmt::format("year 1 to {}, largest difference [K]", year), 0,
        test::largest_difference({chosen.begin(), chosen.begin() + until}, {moved.begin(), moved.begin() + until}),
        0.001);
  }
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::march);
  auto s = drawn_upon();
  const run::Assembly as_chosen = run::assemble(s);
  const auto& grid = as_chosen.problem.grid;
  const double radius = grid.r_faces.back();
  const double margin = grid.z_faces.back() - (s.bore.top + s.bore.depth);
  s.run.grid.radial_cells = static_cast<int>(grid.nr());
  s.run.grid.outer_radius = radius;
  const long hours = years * hours_per_year;
  const auto chosen = test::march(s, hours);

  const std::string setup = fmt::format(
      "EFT of 2 x 2 bores of 90 m from which 25 W/m are drawn for {} years; by itself the engine ends the "
      "ground {:.0f} m from a bore and {:.0f} m below the toes; ",
      years, radius, margin);
  const std::string tolerance = "0.001 K: a tenth of what the step errs by, so that the edges are no part of the error";
  auto& outer = check.claim({"edge-outer", "the ground's outer edge is too far off to be felt",
                             validation::Origin::computed, "the same ground cut off farther out",
                             setup + "the same rings, and as many more as double the radius", tolerance});
  // Rings of the same ratio: nothing but the edge moves.
  const double ratio = grid.r_faces[1] / grid.r_faces[0];
  const int more = static_cast<int>(std::ceil(std::log(2.0) / std::log(ratio)));
  auto wider = s;
  wider.run.grid.radial_cells += more;
  wider.run.grid.outer_radius = radius * std::pow(ratio, more);
  compare(outer, chosen, test::march(wider, hours));

  auto nearer = s;  // that such a comparison can show an edge at all
  nearer.run.grid.radial_cells -= 12;
  nearer.run.grid.outer_radius = radius / std::pow(ratio, 12);
  outer.between(fmt::format("drawn in to {:.0f} m it is felt, largest difference [K]", nearer.run.grid.outer_radius),
                0.001, 10, test::largest_difference(chosen, test::march(nearer, hours)));

  auto& bottom = check.claim({"edge-bottom", "the ground's bottom is too far off to be felt",
                              validation::Origin::computed, "the same ground cut off farther down",
                              setup + "the same layers, and more until the margin is doubled", tolerance});
  auto deeper = s;
  deeper.run.grid.bottom_margin = 2 * margin;
  compare(bottom, chosen, test::march(deeper, hours));
  auto shallower = s;
  shallower.run.grid.bottom_margin = 2;
  bottom.between("2 m below the toes it is felt, largest difference [K]", 0.001, 10,
                 test::largest_difference(chosen, test::march(shallower, hours)));
  return check.finish();
}
