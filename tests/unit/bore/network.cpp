#include "engine/bore/network.hpp"

#include <cmath>

#include "tests/catch.hpp"

using namespace stillground;

namespace {

/// A U's bore of common size; figures invented.
bore::NetworkParts common() {
  return {.bore_resistance = 0.1,
          .internal_resistance = 0.42,
          .even_share = 0.28,
          .odd_share = 0.3,
          .grout_capacity = 46e3,
          .fluid_capacity = 3900,
          .even_spread = 0.23,
          .odd_wall_share = 0.27,
          .ground_capacity = 39e3};
}

/// Another one, of less resistance; figures invented.
bore::NetworkParts another(double odd_share, double even_spread) {
  return {.bore_resistance = 0.075,
          .internal_resistance = 0.42,
          .even_share = 0.17,
          .odd_share = odd_share,
          .grout_capacity = 40e3,
          .fluid_capacity = 3900,
          .even_spread = even_spread,
          .odd_wall_share = 0.36,
          .ground_capacity = 49e3};
}

}  // namespace

TEST_CASE("A mode's resistances add up to those of the steady state") {
  const auto network = bore::make_network(common());
  CHECK(network.modes[0].resistance() == Approx(0.1).epsilon(1e-14));
  CHECK(network.modes[1].resistance() == Approx(0.21).epsilon(1e-14));
}

TEST_CASE("In steady state the even nodes store what grout and pipe walls store, at their mean and spread") {
  const auto even = bore::make_network(common()).modes[0];
  const double outer = even.outer / even.resistance(), inner = (even.outer + even.middle) / even.resistance();
  CHECK(even.inner_capacity + even.outer_capacity == Approx(46e3).epsilon(1e-14));
  CHECK((even.inner_capacity * inner + even.outer_capacity * outer) / 46e3 == Approx(0.28).epsilon(1e-14));
  CHECK((even.inner_capacity * inner * inner + even.outer_capacity * outer * outer) / 46e3 ==
        Approx(0.28 * 0.28 + 0.23 * 0.23).epsilon(1e-14));
}

TEST_CASE("Without spread and ground a mode is fluid, one node, wall") {
  bore::NetworkParts parts = common();
  parts.even_spread = parts.odd_wall_share = parts.ground_capacity = 0;
  const auto network = bore::make_network(parts);
  CHECK(network.modes[0].middle < 1e-3 * 0.1);
  CHECK(network.modes[0].middle > 0);
  CHECK(network.modes[0].outer == Approx(0.028).epsilon(0.002));  // the nodes' remaining distance
  CHECK(network.modes[1].middle + network.modes[1].outer == Approx(0.3 * 0.21).epsilon(1e-14));
  CHECK(network.modes[1].outer_capacity < 1e-5 * network.modes[1].inner_capacity);
}

TEST_CASE("A spread wider than the mean still leaves a positive resistance beyond the outer node, and the same mean") {
  const auto even = bore::make_network(another(0.28, 0.22)).modes[0];
  CHECK(even.outer > 0);
  CHECK((even.outer + even.middle / 2) / even.resistance() == Approx(0.17).epsilon(1e-14));
}

// Carslaw & Jaeger 1959, ch. XIII: on a cylinder, heat of the shape cos(angle); K1 by the standard library.
TEST_CASE("The ground's odd node answers as a cylinder at the time the heat takes round the bore") {
  const double wall = 0.27, radius = 0.075, alpha = 0.9e-6, capacity = 2.2e6;
  const double section = capacity * M_PI * radius * radius;
  bore::NetworkParts parts = common();
  parts.odd_wall_share = wall;
  parts.ground_capacity = section;
  const auto odd = bore::make_network(parts).modes[1];
  CHECK(odd.outer / odd.resistance() == Approx(0.75 * wall).epsilon(1e-14));
  // Heat of this shape meets 1/(pi k) per side; the node takes the place of that resistance's outer three quarters.
  const double steady = 1 / (M_PI * alpha * capacity);
  for (const double x : {0.5, 1.0, 2.0, 3.0}) {
    const double s = x * x * alpha / (radius * radius);
    const double node = 1 / (steady / 4 + 1 / (4 / (3 * steady) + s * odd.outer_capacity));
    const double slope = -std::cyl_bessel_k(0.0, x) - std::cyl_bessel_k(1.0, x) / x;
    const double cylinder = -x * slope / std::cyl_bessel_k(1.0, x) / steady;
    CAPTURE(x);
    CHECK(node == Approx(cylinder).epsilon(x == 1 ? 0.001 : 0.12));
  }
}

TEST_CASE("The ground's odd node stays colder than the grout's and keeps its share of the energy") {
  const auto odd = bore::make_network(another(0.2, 0.1)).modes[1];
  CHECK(odd.middle > 0);
  const double place = odd.outer / odd.resistance();
  CHECK(odd.outer_capacity * place * place == Approx(1.62 * 49e3 * 0.27 * 0.27).epsilon(1e-12));
}
