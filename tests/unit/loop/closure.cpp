#include "engine/loop/closure.hpp"

#include <random>

#include "tests/catch.hpp"

using namespace stillground;

namespace {

const loop::HeatPumps pumps{loop::CopCurve({{268.15, 3.0}, {273.15, 3.4}, {283.15, 4.4}}),
                            loop::CopCurve({{283.15, 7.0}, {298.15, 5.0}, {308.15, 3.9}})};

/// The field's outlet at the operating point's inlet, less the point's EFT [K].
double miss(const loop::FieldOutlet& field, const loop::OperatingPoint& at) {
  return field.gain * at.lft + field.offset - at.eft;
}

}  // namespace

TEST_CASE("Field and heat pumps meet where both agree on EFT and heat") {
  std::mt19937 random(7);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  for (int i = 0; i < 20000; ++i) {
    const double gain = between(0.05, 0.97);
    const double unloaded = between(250, 320);  // the EFT without any heat [K]
    const loop::FieldOutlet field{gain, (1 - gain) * unloaded, between(1e3, 1e5)};
    const double peak = field.heat_rate * between(0, 5);  // up to a 5 K step over the heat pumps
    const loop::Demand demand{.heating = i % 3 != 0 ? peak : 0, .cooling = i % 3 != 1 ? peak : 0};
    const loop::OperatingPoint at = loop::operating_point(field, demand, pumps);
    const loop::Exchange heat = loop::exchange(demand, pumps, at.eft);
    INFO("case " << i << ", EFT " << at.eft);
    REQUIRE(std::abs(miss(field, at)) <= 1e-12 * unloaded);  // round-off of a few sums
    REQUIRE(at.to_ground == Approx(heat.to_ground).epsilon(1e-12).margin(1e-9));
    REQUIRE(at.lft - at.eft == Approx(heat.to_ground / field.heat_rate).margin(1e-12 * unloaded));
  }
}

TEST_CASE("A first guess that is already the root is kept") {
  // Newton lands on the root so well that the residual is zero: no reason to try elsewhere.
  const loop::FieldOutlet field{0.41491285120554483, 166.16549732692587, 3189.3708067375778};
  const loop::OperatingPoint at = loop::operating_point(field, {.cooling = 3000}, pumps);
  // By hand: offset/(1 - gain) = 284.001 K; there COP = 6.79, Q = 3.442 kW; gain/(1 - gain) Q/heat_rate = 0.765 K.
  CHECK(at.eft == Approx(284.766).margin(0.002));
  CHECK(std::abs(miss(field, at)) < 1e-12 * 284);
}

TEST_CASE("Without heat pumps the given heat alone decides") {
  const loop::FieldOutlet field{0.5, 140, 2000};
  const loop::OperatingPoint at = loop::operating_point(field, {.to_ground = 4000}, {});
  CHECK(at.eft == Approx(282).epsilon(1e-14));  // (140 + 0.5 * 2)/(1 - 0.5)
  CHECK(at.lft == Approx(284).epsilon(1e-14));
  CHECK(at.power == 0);
}
