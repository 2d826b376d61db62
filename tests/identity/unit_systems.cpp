#include <filesystem>
#include <fstream>

#include "engine/config/read.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

namespace {

const char* const european = R"(title: one site in two tongues
ground:
  layers:
    - {to: 9.144 m, conductivity: 1.5576611997342518 W/(m K), heat_capacity: 2.2131813809851776 MJ/(m3 K)}
    - {conductivity: 2.423028532919947 W/(m K), heat_capacity: 2.011983073622889 MJ/(m3 K)}
  undisturbed: {surface_mean: 10 degC, surface_swing: 10 K, coldest_day: 25, heat_flow: 0.06309181490126096 W/m2}
bore:
  top: 1.8288 m
  depth: 91.44 m
  diameter: 152.4 mm
  loop: single-u
  pipe: {outer_diameter: 42.164 mm, wall: 3.8354 mm, conductivity: 0.42 W/(m K), heat_capacity: 1.9 MJ/(m3 K)}
  leg_spacing: 76.2 mm
  grout: {conductivity: 1.730734666371391 W/(m K), heat_capacity: 3.0 MJ/(m3 K)}
field: {grid: {rows: 2, columns: 2, spacing: 6.096 m}}
fluid: {base: water}
flow: {per_bore: 0.3469960802 L/s, runs: always}
loads: {to_ground: 11.72284280688889 kW}
run: {start: 2027-07, years: 1}
)";

const char* const american = R"(title: one site in two tongues
ground:
  layers:
    - {to: 30 ft, conductivity: 0.9 Btu/(h ft degF), heat_capacity: 33 Btu/(ft3 degF)}
    - {conductivity: 1.4 Btu/(h ft degF), heat_capacity: 30 Btu/(ft3 degF)}
  undisturbed: {surface_mean: 50 degF, surface_swing: 18 degF, coldest_day: 25, heat_flow: 0.02 Btu/(h ft2)}
bore:
  top: 6 ft
  depth: 300 ft
  diameter: 6 in
  loop: single-u
  pipe: {outer_diameter: 1.66 in, wall: 0.151 in, conductivity: 0.42 W/(m K), heat_capacity: 1.9 MJ/(m3 K)}
  leg_spacing: 3 in
  grout: {conductivity: 1 Btu/(h ft degF), heat_capacity: 3.0 MJ/(m3 K)}
field: {grid: {rows: 2, columns: 2, spacing: 20 ft}}
fluid: {base: water}
flow: {per_bore: 5.5 gpm, runs: always}
loads: {to_ground: 40 MBH}
run: {start: 2027-07, years: 1}
)";

model::Scenario read(const char* name, const char* text) {
  const auto file = std::filesystem::temp_directory_path() / name;
  std::ofstream(file) << text;
  const auto scenario = config::read_scenario(file);
  std::filesystem::remove(file);
  return scenario;
}

}  // namespace

// Factors: NIST SP 811 (2008), appendix B, International Table Btu [from memory]; the European figures are their
// products.
TEST_CASE("A site in feet, Btu and gpm marches like the same site in metres and watts") {
  const auto metric = read("stillground-unit-systems-si.yaml", european);
  const auto imperial = read("stillground-unit-systems-us.yaml", american);
  CHECK(imperial.bore.depth == Approx(metric.bore.depth).epsilon(1e-12));
  CHECK(imperial.flow.rate == Approx(metric.flow.rate).epsilon(1e-12));
  CHECK(imperial.ground.layers[1].solid.conductivity ==
        Approx(metric.ground.layers[1].solid.conductivity).epsilon(1e-12));
  // 1e-9 K: inputs equal to 1e-12, temperatures of 300 K.
  CHECK(test::largest_difference(test::march(metric, 200), test::march(imperial, 200)) < 1e-9);
}
