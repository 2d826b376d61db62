// Source: potential theory: a line source, its mirror images in the surface and in one layer boundary
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "engine/assembly/assembly.hpp"
#include "engine/field/superposition.hpp"
#include "engine/ground/steady.hpp"
#include "tests/march_scenario.hpp"
#include "validation/harness/claim.hpp"
#include "validation/harness/traces.hpp"
#include "validation/harness/worst_case.hpp"

using namespace stillground;

namespace {

constexpr ground::DepthInterval reach{2, 102};
constexpr double heat = 20;  // [W/m]

/// Integral of 1/R along a line from a to b, at distance r from it and depth z.
double line(double r, double z, double a, double b) {
  return std::asinh((b - z) / r) - std::asinh((a - z) / r);
}

/// Steady rise at (r, z) under a line of `heat` through a layer of conductivity `upper` down to `d` over one of
/// `lower`, the surface held at zero. Images of every point of the line: mirrored at the surface they change sign; at
/// the boundary, seen from above, they take the factor m = (k1 - k2)/(k1 + k2), seen from below -m, and 1 + m or 1 - m
/// passes.
double two_layers(double upper, double lower, double d, double r, double z) {
  const double m = (upper - lower) / (upper + lower);
  const double top = reach.top, toe = reach.toe, cut = std::clamp(d, top, toe);
  const auto image = [&](double a, double b, double sign, double shift) {  // of the line a..b, put at sign z0 + shift
    return sign > 0 ? line(r, z, a + shift, b + shift) : line(r, z, shift - b, shift - a);
  };
  double from_above = 0, from_below = 0;
  constexpr int images = 200;
  if (z < d) {
    double factor = 1;
    for (int n = 0; n < images; ++n, factor *= -m) {
      const double shift = 2 * d * n;
      from_above += factor * (image(top, cut, 1, shift) - image(top, cut, -1, -shift));
      if (n > 0) from_above += factor * (image(top, cut, 1, -shift) - image(top, cut, -1, shift));
      // What the lower part sends up: seen at z0 + 2 n d and, from the surface, at -(z0 + 2 n d).
      from_below += (1 + m) * factor * (image(cut, toe, 1, shift) - image(cut, toe, -1, -shift));
    }
    return heat / (4 * std::numbers::pi * upper) * (from_above + from_below);
  }
  from_below = image(cut, toe, 1, 0) - m * image(cut, toe, -1, 2 * d);
  double factor = 1;
  for (int n = 0; n < images; ++n, factor *= -m) {
    const double shift = 2 * d * n;
    from_above += (1 + m) * factor * (image(top, cut, 1, -shift) - image(top, cut, -1, -shift));
    from_below -= (1 - m * m) * factor * image(cut, toe, -1, -shift);
  }
  return heat / (4 * std::numbers::pi) * (from_above / upper + from_below / lower);
}

constexpr double distances[] = {1, 3, 6, 20};  // from the bore [m]

/// Steady rise on the engine's own grid under `heat` in each layer: [z][r] as of ground::Steady.
struct Marched {
  ground::Grid grid;
  std::vector<double> rise;

  double at(double r, std::size_t k) const {
    double sum = 0;
    for (const auto& w : field::radial_weights(grid.r, r)) sum += w.weight * rise[k * grid.nr() + w.cell];
    return sum;
  }
};

Marched marched(double upper, double lower, double d) {
  const std::vector<model::Layer> layers{{d, "", {upper, 2.2e6}},
                                         {std::numeric_limits<double>::infinity(), "", {lower, 2.2e6}}};
  const double outer = 300, radius = 0.075;
  const int rings = static_cast<int>(std::ceil(std::log(outer / radius) / std::log(assembly::ring_ratio)));
  Marched all{ground::make_grid({radius, outer, rings, 0.5, 1.2, 8, 180}, layers, {reach}), {}};
  auto at_wall = ground::active_fraction(all.grid, reach);
  for (double& q : at_wall) q *= heat;
  all.rise = ground::Steady(all.grid).rise(at_wall);
  return all;
}

void compare(validation::Claim& claim, double upper, double lower, double d) {
  const Marched ground = marched(upper, lower, d);
  validation::Traces traces;
  for (const double r : distances) {
    std::array<validation::WorstCase, 4> worst;
    double largest = 0;
    for (std::size_t k = 0; k < ground.grid.nz() && ground.grid.z[k] < 130; ++k) {
      const double z = ground.grid.z[k], expected = two_layers(upper, lower, d, r, z), ours = ground.at(r, k);
      largest = std::max(largest, expected);
      const bool near_boundary = upper != lower && std::abs(z - d) < 12;
      worst[near_boundary   ? 0
            : z < d         ? 1
            : z < reach.toe ? 2
                            : 3]
          .compare_absolute(fmt::format("{:.1f} m deep", z), expected, ours);
      if (r < 10) traces.add(fmt::format("{:g} m off", r), z, expected, ours);
    }
    const std::array<const char*, 4> parts{"about the boundary", "upper layer", "lower layer", "below the toe"};
    for (std::size_t i = upper == lower ? 1 : 0; i < 4; ++i)
      worst[i].row(claim, fmt::format("{:g} m off, {}", r, parts[i]), 0.005 * largest);
  }
  claim.plot(traces.on({"Steady rise under 20 W/m", "depth [m]", "rise [K]", false, false, {}}));
}

/// Two layers drawn at random, a hundred times; everything over the largest rise at its distance.
void compare_drawn(validation::Claim& claim) {
  test::Noise draw;
  std::array<validation::WorstCase, std::size(distances)> worst;
  for (int pair = 0; pair < 100; ++pair) {
    const double upper = 0.8 * std::pow(5, draw()), lower = 0.8 * std::pow(5, draw()), d = 5 + 90 * draw();
    const Marched ground = marched(upper, lower, d);
    for (std::size_t i = 0; i < std::size(distances); ++i) {
      const auto expected = [&](double z) { return two_layers(upper, lower, d, distances[i], z); };
      double largest = 0;
      for (const double z : ground.grid.z) largest = std::max(largest, expected(z));
      for (std::size_t k = 0; k < ground.grid.nz() && ground.grid.z[k] < 130; ++k) {
        worst[i].compare_absolute(
            fmt::format("k {:.2f} above {:.1f} m, {:.2f} below, {:.1f} m deep", upper, d, lower, ground.grid.z[k]),
            expected(ground.grid.z[k]) / largest, ground.at(distances[i], k) / largest);
      }
    }
  }
  for (std::size_t i = 0; i < std::size(distances); ++i)
    worst[i].row(claim, fmt::format("{:g} m off", distances[i]), 0.005);
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::ground);
  const std::string source =
      "potential theory: line source (Eskilson 1987), mirror images in the surface and in a boundary of two "
      "conductivities (the two-layer earth of geoelectrics, Stefanesco & Schlumberger 1930 [from memory]), worked anew";
  const std::string setup =
      "rise [K] in the end, 20 W/m at every depth from 2 to 102 m, surface at 0; at the middles of the engine's own "
      "layers down to 130 m, 1 to 20 m off; ";
  const std::string tolerance =
      "0.5 % of the largest rise at that distance: what the reference's README asks of neighbours, on layers of up to "
      "8 m";
  compare(check.claim({"steady-even", "under constant heat the ground ends in the steady finite line source",
                       validation::Origin::computed, source, setup + "k 2.5 W/(m K)", tolerance}),
          2.5, 2.5, 30);
  compare(check.claim({"steady-soft-over-hard", "the same in soft ground over hard rock", validation::Origin::computed,
                       source, setup + "k 1.2 above 30 m, 3.2 W/(m K) below", tolerance}),
          1.2, 3.2, 30);
  compare(check.claim({"steady-hard-over-soft", "the same in hard rock over soft ground", validation::Origin::computed,
                       source, setup + "k 3.2 above 40 m, 1.2 W/(m K) below", tolerance}),
          3.2, 1.2, 40);
  compare_drawn(check.claim(
      {"steady-two-layers-drawn", "the same in two layers drawn at random, wherever they meet along the bore",
       validation::Origin::computed, source,
       "100 pairs, k 0.8 to 4 W/(m K), boundary 5 to 95 m deep; rise over the largest at that distance",
       "0.5 % of the largest rise at that distance, as for the two above"}));
  return check.finish();
}
