#include <cmath>

#include "engine/base/calendar.hpp"
#include "tests/march_scenario.hpp"
#include "validation/convergence/claims.hpp"
#include "validation/convergence/refinement.hpp"
#include "validation/harness/uniform_bore.hpp"

namespace stillground::validation {

namespace {

model::Scenario lone_bore() {
  auto s = test::scenario(1, 1);
  s.run.clocks = model::Run::Clocks::one;  // the second clock keeps an error of its own, see validation/two_clocks
  s.ground.undisturbed = model::MeanOverBore{285};
  s.heat_pump.reset();
  s.flow.runs = model::Flow::Runs::always;
  s.bore.resistance = model::MeasuredResistance{0.1, {}, {}};
  s.loads = model::ConstantGroundLoad{-4500};
  return s;
}

/// Hourly EFT between two hours.
std::vector<double> eft(const model::Scenario& s, long from, long to) {
  const auto marched = test::march(s, to);
  std::vector<double> result;
  for (auto i = static_cast<std::size_t>(from); i < marched.size(); ++i) result.push_back(marched[i].eft);
  return result;
}

void radius(Check& check) {
  auto& claim = check.claim(
      {"order-radius", "the error falls at least with the square of the rings' width", Origin::engine,
       "marches of ours on finer rings; what order to expect: central differences in ln r are of order two; where the "
       "rings' nodes stand takes the second-order term off a "
       "line source's rise (see ground::Grid), which leaves four",
       "EFT of one bore under -4.5 kW, hours 48 to 720, real march on 23 to 184 rings; and g at mid-depth 5 m off a "
       "bore "
       "of uniform heat, 60 to 400 days",
       "1.8 to 4.5: no less than two, no more than four and the scatter of few grids; on 46 rings 0.005 K, a tenth of "
       "a "
       "per cent of the rise, and 0.0015 in g, 0.5 % of 0.3"});
  Refinement wall{{1.0 / 23, 1.0 / 46, 1.0 / 92, 1.0 / 184}, {}}, beside = wall;
  for (const double size : wall.sizes) {
    auto s = lone_bore();
    s.run.grid.radial_cells = static_cast<int>(std::lround(1 / size));
    wall.answers.push_back(eft(s, 48, 720));

    UniformBore bore({0.075, 300, s.run.grid.radial_cells, 0.5, 1.3, 8, 60}, {2, 2e6}, {2, 122});
    const auto& z = bore.problem().grid.z;
    std::size_t middle = 0;
    while (z[middle] < 62) ++middle;
    std::vector<double> times, g;
    for (int day = 60; day <= 400; day += 20) times.push_back(day * seconds_per_day);
    bore.march(times, 60, 43200, [&](double) { g.push_back(4 * std::acos(-1.0) * bore.at_distance(5, middle)); });
    beside.answers.push_back(g);
  }
  wall.rows(claim, "EFT", "1/rings", 1.8, 4.5, 1, 0.005, "K");
  beside.rows(claim, "5 m off", "1/rings", 1.8, 4.5, 1, 0.0015, "g");
}

void depth(Check& check) {
  auto& claim = check.claim(
      {"order-depth", "the error falls at least with the layers' height, whose ends decide it", Origin::engine,
       "marches of ours on finer layers; what order to expect: finite volumes are of order two where the field is "
       "smooth (manufactured-axial); at a "
       "bore's ends the heat breaks "
       "off within the bore's radius, which layers taller than that meet to order one",
       "EFT of one bore under -4.5 kW, every hour of day 90 to 365; the preset layers, then all heights halved three "
       "times: 0.5 to 0.0625 m at the ends, at most 8 to 1 m along the bore, growing from there by 1.2, its root, its "
       "fourth root and so on",
       "0.8 to 2.2: between one and two, and the scatter of few grids; 0.02 K on the preset layers, 0.2 % of the "
       "rise"});
  Refinement layers{{0.5, 0.25, 0.125, 0.0625}, {}};
  for (const double size : layers.sizes) {
    auto s = lone_bore();
    s.run.grid.end_cell = size;
    s.run.grid.growth = std::pow(1.2, size / 0.5);
    s.run.grid.largest_cell = 16 * size;
    layers.answers.push_back(eft(s, 90 * 24, hours_per_year));
  }
  layers.rows(claim, "EFT", "m at the ends", 0.8, 2.2, 0, 0.02, "K");
}

}  // namespace

void order_in_space(Check& check) {
  radius(check);
  depth(check);
}

}  // namespace stillground::validation
