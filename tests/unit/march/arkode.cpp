#include <algorithm>
#include <cmath>

#include "engine/march/arkode/stepper.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/stage.hpp"
#include "engine/march/tableau.hpp"
#include "tests/catch.hpp"
#include "tests/unit/march/small_field.hpp"

using namespace stillground;

namespace {

/// One ARS(2,2,2) step written out from the paper's tables.
void step_by_hand(const march::Problem& problem, const march::Multirate& multirate, march::State& state,
                  const march::Forcing& forcing, march::Workers& workers) {
  constexpr double gamma = march::ars222::gamma, delta = march::ars222::delta;
  const double h = multirate.step;
  march::StageSolver solver(problem, multirate, gamma * h, workers);
  const march::AxialFactors axial(problem);
  const march::StateLayout layout(problem);
  const std::size_t n = layout.size(), block = layout.block();
  march::Vector e0(n), e1(n), y1(n), y2(n), slope(n);
  const auto rate = [&](const march::Vector& y, march::Vector& e) {
    for (std::size_t g = 0; g < problem.groups.size(); ++g) axial.rate(y.data() + g * block, e.data() + g * block);
  };
  const auto solve = [&](double c, march::Vector& y) {
    solver.solve(
        state, state.time + c * h, forcing, [&](std::size_t g) { return y.data() + g * block; }, [](std::size_t) {});
  };
  rate(state.y, e0);
  for (std::size_t i = 0; i < n; ++i) y1[i] = state.y[i] + gamma * h * e0[i];
  const march::Vector known = y1;
  solve(gamma, y1);
  for (std::size_t i = 0; i < n; ++i) slope[i] = (y1[i] - known[i]) / (gamma * h);
  rate(y1, e1);
  for (std::size_t i = 0; i < n; ++i) {
    y2[i] = state.y[i] + h * (delta * e0[i] + (1 - delta) * e1[i]) + (1 - gamma) * h * slope[i];
  }
  solve(1, y2);
  state.y = y2;
  state.time += h;
}

}  // namespace

TEST_CASE("ARKODE takes the very steps that the tables of ARS(2,2,2) prescribe") {
  const auto problem = test::small_field();
  const march::Multirate multirate;
  const auto flowing = test::regime(problem, 1400);
  const march::Forcing forcing{{.to_ground = -9000}, &flowing};
  march::Workers workers(1);
  auto stepper = march::make_arkode_stepper(problem, multirate, workers);
  auto by_arkode = test::at_rest(problem);
  auto by_hand = by_arkode;
  march::Vector wall_heat(problem.groups.size() * march::StateLayout(problem).row());
  for (int hour = 0; hour < 24; ++hour) {
    stepper->advance(by_arkode, forcing, wall_heat);
    step_by_hand(problem, multirate, by_hand, forcing, workers);
    step_by_hand(problem, multirate, by_hand, forcing, workers);
  }
  double worst = 0;
  for (std::size_t i = 0; i < by_hand.y.size(); ++i) worst = std::max(worst, std::abs(by_hand.y[i] - by_arkode.y[i]));
  CHECK(worst < 1e-9);  // round-off of 48 steps at 300 K; the temperatures themselves have moved by kelvins
  CHECK(by_arkode.time == 86400);
}

TEST_CASE("What the hour's means say went in is what the state has gained and the surface has lost") {
  const auto problem = test::small_field();
  const march::Multirate multirate;
  const auto flowing = test::regime(problem, 1400);
  const auto stagnant = test::regime(problem, 0);
  march::Workers workers(1);
  auto stepper = march::make_arkode_stepper(problem, multirate, workers);
  auto state = test::at_rest(problem);
  march::Vector wall_heat(problem.groups.size() * march::StateLayout(problem).row());
  const double before = test::stored(problem, flowing, state);
  double in = 0, out = 0, turned = 0;
  for (int hour = 0; hour < 500; ++hour) {
    const double load = hour % 5 == 4 ? 0 : 6000 * std::sin(hour * 0.7) - 3000;
    const auto means = stepper->advance(state, {{.to_ground = load}, load == 0 ? &stagnant : &flowing}, wall_heat);
    CHECK(means.to_ground == Approx(load).margin(1e-6));
    in += means.to_ground * 3600;
    out += means.surface * 3600;
    turned += std::abs(load) * 3600;
  }
  CHECK(std::abs(in - (test::stored(problem, flowing, state) - before) - out) <
        1e-9 * turned);  // round-off of many sums
}

TEST_CASE("Bores that are not drilled yet give no heat to the ground, whatever the stepper marched before") {
  const auto problem = test::small_field();
  const march::Multirate multirate;
  const auto flowing = test::regime(problem, 1400);
  march::Workers workers(1);
  auto stepper = march::make_arkode_stepper(problem, multirate, workers);
  auto before = test::at_rest(problem), state = before;
  march::Vector wall_heat(problem.groups.size() * march::StateLayout(problem).row());
  stepper->advance(before, {{.to_ground = 4000}, &flowing}, wall_heat);
  std::fill(wall_heat.begin(), wall_heat.end(), 0.0);
  stepper->advance(state, {{.to_ground = 4000}, nullptr, {&flowing, nullptr}}, wall_heat);
  const std::size_t k = problem.groups[1].first;
  CHECK(wall_heat[k] != 0);
  CHECK(wall_heat[march::StateLayout(problem).row() + k] == 0);
}
