#include "engine/ground/steady.hpp"

#include <cmath>
#include <limits>
#include <numbers>

#include "tests/catch.hpp"

using namespace stillground;

namespace {

const std::vector<model::Layer> rock{{std::numeric_limits<double>::infinity(), "rock", {2.5, 2.2e6}}};

}  // namespace

// A finite line source of uniform heat with its mirror image, in the end: mean over the line at radius r (Eskilson
// 1987; the double integral of 1/(4 pi k R) has this closed form, integrated here by the midpoint rule along z over the
// exact inner integral of asinh).
TEST_CASE("Under constant heat the ground tends to the steady finite line source") {
  const double top = 2, toe = 102, r = 6, q = 20;
  const auto grid = ground::make_grid({0.075, 300, 72, 0.5, 1.15, 4, 180}, rock, {{top, toe}});
  const ground::Steady steady(grid);
  auto heat = ground::active_fraction(grid, {top, toe});
  for (double& h : heat) h *= q;
  const auto rise = steady.rise(heat);

  const auto exact = [&](double z) {
    const double source = std::asinh((toe - z) / r) - std::asinh((top - z) / r);
    const double image = std::asinh((toe + z) / r) - std::asinh((top + z) / r);
    return q / (4 * std::numbers::pi * 2.5) * (source - image);
  };
  for (std::size_t k = 0; k < grid.nz(); ++k) {
    if (grid.z[k] < 10 || grid.z[k] > 95) continue;
    std::size_t i = 0;
    while (grid.r[i + 1] < r) ++i;
    const double part = std::log(r / grid.r[i]) / std::log(grid.r[i + 1] / grid.r[i]);
    const double ours = std::lerp(rise[k * grid.nr() + i], rise[k * grid.nr() + i + 1], part);
    CHECK(ours == Approx(exact(grid.z[k])).epsilon(0.005));  // cells of up to 4 m and a chord of ln r
  }
}

// A point at depth d under a surface held at zero sends 1 - d/sqrt(d^2 + R^2) of its heat through the disc of radius R
// above it (source and image; potential theory): the mean over the line is as below.
TEST_CASE("In the steady state a buried line sends its heat through the surface as source and image say") {
  const double top = 2, toe = 102, radius = 300;
  const auto grid = ground::make_grid({0.075, radius, 36, 1, 1.3, 8, 180}, rock, {{top, toe}});
  const ground::Steady steady(grid);
  const auto rise = steady.rise(ground::active_fraction(grid, {top, toe}));
  double out = 0;
  for (std::size_t i = 0; i < grid.nr(); ++i) out += 2.5 / (grid.height(0) / 2) * grid.ring_area(i) * rise[i];
  const double within = 1 - (std::hypot(toe, radius) - std::hypot(top, radius)) / (toe - top);
  CHECK(out == Approx(100 * within).epsilon(0.003));  // rings 25 % apart
}
