// Source: none: the same ground cut off farther out
// Tier:      full
#include <fmt/format.h>

#include <cmath>

#include "tests/march_scenario.hpp"
#include "validation/harness/claim.hpp"

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

/// Largest difference of the EFT in run-years `first` to `last`.
double difference(const std::vector<record::Hour>& chosen, const std::vector<record::Hour>& moved, int first,
                  int last) {
  const auto from = static_cast<std::ptrdiff_t>(first - 1) * hours_per_year;
  const auto to = static_cast<std::ptrdiff_t>(last) * hours_per_year;
  return test::largest_difference({chosen.begin() + from, chosen.begin() + to},
                                  {moved.begin() + from, moved.begin() + to});
}

constexpr double allowed = 0.001;

void compare(validation::Claim& claim, const std::vector<record::Hour>& chosen, const std::vector<record::Hour>& moved,
             int first, int last) {
  claim.absolute(fmt::format("year {} to {}, largest difference [K]", first, last), 0,
                 difference(chosen, moved, first, last), allowed);
}

/// In its 16,000th hour the flow turns laminar. From Re 2345 to 2285 a colder fluid meets so much more film that it
/// turns colder still, and a difference of 1e-4 K, whatever made it, grows six hundredfold before it is back at 1e-4.
void compare_at_the_turn(validation::Claim& claim, const std::vector<record::Hour>& chosen,
                         const std::vector<record::Hour>& moved) {
  claim.known_absolute_miss("year 2, in which the flow turns laminar, largest difference [K]", 0,
                            difference(chosen, moved, 2, 2), allowed, 0.1,
                            "near Re 2300 the film's feedback makes the EFT ill-conditioned for some twenty hours");
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::march);
  auto s = drawn_upon();
  const assembly::Assembly as_chosen = assembly::assemble(s);
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
                             validation::Origin::engine, "the same ground cut off farther out",
                             setup + "the same rings, and as many more as double the radius", tolerance});
  // Rings of the same ratio: nothing but the edge moves.
  const double ratio = grid.r_faces[1] / grid.r_faces[0];
  const int more = static_cast<int>(std::ceil(std::log(2.0) / std::log(ratio)));
  auto wider = s;
  wider.run.grid.radial_cells += more;
  wider.run.grid.outer_radius = radius * std::pow(ratio, more);
  const auto farther = test::march(wider, hours);
  compare(outer, chosen, farther, 1, 1);
  compare(outer, chosen, farther, 1, 5);
  compare(outer, chosen, farther, 1, years);

  auto nearer = s;  // that such a comparison can show an edge at all
  nearer.run.grid.radial_cells -= 12;
  nearer.run.grid.outer_radius = radius / std::pow(ratio, 12);
  outer.between(fmt::format("drawn in to {:.0f} m it is felt, largest difference [K]", nearer.run.grid.outer_radius),
                0.001, 10, test::largest_difference(chosen, test::march(nearer, hours)));

  auto& bottom = check.claim({"edge-bottom", "the ground's bottom is too far off to be felt",
                              validation::Origin::engine, "the same ground cut off farther down",
                              setup + "the same layers, and more until the margin is doubled", tolerance});
  auto deeper = s;
  deeper.run.grid.bottom_margin = 2 * margin;
  const auto lower = test::march(deeper, hours);
  compare(bottom, chosen, lower, 1, 1);
  compare_at_the_turn(bottom, chosen, lower);
  compare(bottom, chosen, lower, 3, 5);
  compare(bottom, chosen, lower, 3, years);
  auto shallower = s;
  shallower.run.grid.bottom_margin = 2;
  bottom.between("2 m below the toes it is felt, largest difference [K]", 0.001, 10,
                 test::largest_difference(chosen, test::march(shallower, hours)));
  return check.finish();
}
