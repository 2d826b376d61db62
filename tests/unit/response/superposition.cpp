#include "engine/response/superposition.hpp"

#include <cmath>

#include "tests/catch.hpp"

using namespace stillground;

namespace {

/// Heat before each hour of a load that jumps about.
struct Load {
  std::vector<double> heat, before{0};

  explicit Load(int hours) {
    for (int h = 0; h < hours; ++h) {
      heat.push_back(std::sin(h * 12.9898) * 3000 + (h % 7) * 100);
      before.push_back(before.back() + heat.back());
    }
  }
};

}  // namespace

// The definition, term by term; round-off of sums of some 1e5 W h at values of 1e-3 K/W: 1e-9 K is generous.
TEST_CASE("Superposition by sums over the knots is the plain sum over all changes of the load") {
  const Load load(600);
  const response::StepResponse u({0, 1, 2, 3, 10, 50, 400}, {1e-3, 2e-3, 1.5e-3, 1e-4, -3e-4, 2e-3, 2.4e-3});
  for (const long hour : {0L, 1L, 5L, 49L, 50L, 51L, 399L, 400L, 599L}) {
    double plain = 0;
    for (long h = 0; h <= hour; ++h) {
      const auto i = static_cast<std::size_t>(h);
      plain += u.after(hour - h) * (load.heat[i] - (h > 0 ? load.heat[i - 1] : 0.0));
    }
    INFO("hour " << hour);
    CHECK(std::abs(response::superposed(u, load.before, hour) - plain) < 1e-9);
    CHECK(std::abs(response::superposed(u, load.before)[static_cast<std::size_t>(hour)] - plain) < 1e-9);
  }
}

TEST_CASE("A constant load is answered by the step response itself, held beyond its last knot") {
  const std::vector<double> before{0, 2, 4, 6, 8, 10, 12, 14};
  const response::StepResponse u({0, 1, 4}, {0.5, 1.0, 4.0});
  CHECK(u.after(3) == Approx(3.0));
  CHECK(u.after(100) == 4.0);
  for (long hour = 0; hour < 7; ++hour) CHECK(response::superposed(u, before, hour) == Approx(2 * u.after(hour)));
}
