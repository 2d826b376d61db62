#include "validation/reference_solutions/segmented_field.hpp"

#include <string>

#include "tests/catch.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground::reference_solutions;

namespace {

constexpr double year = 8760 * 3600.0;
const SegmentedGround ground{2.0, 2.0e6, 0.075};

std::vector<SegmentedBore> square(int columns, int rows, double spacing, double length) {
  std::vector<SegmentedBore> bores;
  for (int j = 0; j < rows; ++j) {
    for (int i = 0; i < columns; ++i) bores.push_back({spacing * i, spacing * j, 2, length});
  }
  return bores;
}

}  // namespace

// Reference: common_temperature_fields.csv, the Laplace transform with 64 segments, within 5e-5 of the limit.
TEST_CASE("Segments superposed in time agree with the Laplace transform") {
  SegmentedField field(ground, square(2, 2, 6, 120), 6 * year);
  const std::vector<SegmentedLoop> loops(4, {1e8, 0.1, 1e6});
  double before = 0;
  int compared = 0;
  for (const auto& row : read_table(REFERENCE_SOLUTIONS "/common_temperature_fields.csv")) {
    const double years = std::stod(row.at("years"));
    if (row.at("case") != "square of 4" || years > 5) continue;
    const auto state = field.hold(20 * 480, loops, (years - before) * year);
    before = years;
    // 16 segments stand 0.05 to 0.1 % high (shared_inlet.csv), steps that grow by half add as much.
    CHECK(state.inlet == Approx(std::stod(row.at("rise"))).epsilon(2e-3));
    ++compared;
  }
  CHECK(compared == 3);
}

TEST_CASE("A bore that stands takes no heat, and its neighbours all") {
  SegmentedField field(ground, square(2, 1, 6, 100), year);
  const SegmentedLoop flows{1500, 0.1, 0.4}, stands{};
  const auto both = field.hold(4000, {flows, flows}, 30 * 86400.0);
  CHECK(both.heat[0] == Approx(2000));
  const auto one = field.hold(4000, {flows, stands}, 30 * 86400.0);
  CHECK(one.heat[0] == Approx(4000));
  CHECK(one.heat[1] == 0);
  CHECK(one.inlet - one.outlet == Approx(4000.0 / 1500));
}

// Of even heat along the bore R_b* = R_b + (H/W)^2/(3 R_a): Hellström (1991) [from memory]. Ground that is a thousand
// times as resistive as the bore makes it even.
TEST_CASE("What the streams of a segmented bore give each other makes its resistance larger") {
  const SegmentedGround even{2e-3, 2e3, 0.075};
  const double length = 200, rate = 600, local = 0.1, internal = 0.35, heat = 4000;
  const std::vector<SegmentedBore> bore{{0, 0, 2, length}};
  SegmentedField slow(even, bore, year), fast(even, bore, year);
  const auto with = slow.hold(heat, {{rate, local, internal}}, 5 * 86400.0);
  const auto without = fast.hold(heat, {{1e9, local, internal}}, 5 * 86400.0);
  const double more = ((with.inlet + with.outlet) / 2 - without.inlet) / (heat / length);
  CHECK(more == Approx(length * length / (rate * rate * 3 * internal)).epsilon(2e-3));
}
