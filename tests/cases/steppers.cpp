#include <string>

#include "tests/cases/cases.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

namespace {

// 1e-9 K (numerics): round-off of some hundred steps at 300 K, which a film's feedback may make a few times larger. The
// reference is SUNDIALS' ARKODE.
constexpr double round_off = 1e-9;

void check_steppers(model::Scenario s, long hours) {
  s.run.clocks = model::Run::Clocks::one;
  const auto fused = test::march(s, hours);
  s.run.stepper = model::Run::Stepper::reference;
  const auto reference = test::march(s, hours);
  double eft = 0, heat = 0, most_heat = 0;
  for (std::size_t i = 0; i < fused.size(); ++i) {
    eft = std::max({eft, std::abs(fused[i].eft - reference[i].eft), std::abs(fused[i].lft - reference[i].lft)});
    heat = std::max(heat, std::abs(fused[i].heat_to_ground - reference[i].heat_to_ground));
    most_heat = std::max(most_heat, std::abs(reference[i].heat_to_ground));
  }
  CHECK(most_heat > 0);  // something happened
  CHECK(eft <= round_off);
  CHECK(heat <= round_off * most_heat);
}

/// A scenario drawn at random: layers, loop, layout, step and flow.
model::Scenario draw(test::Noise& noise) {
  const auto between = [&](double low, double high) { return low + (high - low) * noise(); };
  const auto whole = [&](int low, int high) { return low + static_cast<int>(between(0, high - low + 1)); };
  auto s = test::scenario(whole(1, 3), whole(1, 3));
  s.ground.layers.clear();
  double bottom = 0;
  for (int layers = whole(0, 4); layers > 0; --layers) {
    bottom += between(3, 30);
    s.ground.layers.push_back({bottom, "layer", {between(0.8, 4), between(1.5e6, 3e6)}});
  }
  s.ground.layers.push_back({std::numeric_limits<double>::infinity(), "last", {between(0.8, 4), between(1.5e6, 3e6)}});
  s.bore.depth = between(40, 150);
  s.bore.top = between(0.8, 3);
  if (noise() < 0.3) s.bore.loop = model::DoubleU{0.08, model::DoubleU::Connection::series, noise() < 0.5};
  s.layout = model::Grid{s.flow.in_series * whole(1, 3), whole(1, 3), between(4, 9)};
  const double steps[] = {600, 1200, 1800, 3600};
  s.run.step = steps[whole(0, 3)];
  s.flow.rate = between(0.15e-3, 0.6e-3);
  if (noise() < 0.3) s.flow.runs = model::Flow::Runs::always;
  return s;
}

}  // namespace

TEST_CASE("On every example case the fused stepper and the reference march alike") {
  for (const std::string& name : cases::scenario_names()) {
    DYNAMIC_SECTION(name) {
      check_steppers(cases::read(name), 200);
    }
  }
}

TEST_CASE("On scenarios drawn at random the fused stepper and the reference march alike") {
  test::Noise noise;
  for (int n = 0; n < 8; ++n) {
    const model::Scenario s = draw(noise);
    DYNAMIC_SECTION("scenario " << n) {
      check_steppers(s, 150);
    }
  }
}
