#include "engine/march/stage.hpp"

#include <cmath>

#include "tests/catch.hpp"
#include "tests/unit/march/small_field.hpp"

using namespace stillground;

namespace {

/// Any state will do: smooth but without a pattern that could cancel.
void disturb(const march::Problem& problem, const march::Forcing& forcing, march::State& state) {
  const march::StateLayout layout(problem);
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    if (!forcing.of(g)) continue;  // no bore, no rise
    for (std::size_t row = 0; row < layout.ground_row() + problem.nr(); ++row) {
      const bool in_bore = row < layout.ground_row();
      for (std::size_t k = 0; k < problem.nz(); ++k) {
        if (in_bore && (k < problem.groups[g].first || k >= problem.groups[g].end)) continue;
        const auto x = static_cast<double>(17 * row + 5 * k + 3 * g);
        state.y[g * layout.block() + row * layout.row() + k] += std::sin(x);
      }
    }
  }
  for (std::size_t i = 0; i < state.neighbours.size(); ++i)
    state.neighbours[i] = 0.3 * std::cos(static_cast<double>(i));
}

/// Largest |Y - rhs - kappa f_I(Y)| over the field.
double residual(const march::Forcing& forcing, const march::Problem& problem = test::small_field()) {
  const march::StateLayout layout(problem);
  const march::Multirate multirate;
  auto state = test::at_rest(problem);
  disturb(problem, forcing, state);
  const double kappa = 527;
  march::Workers workers(1);
  march::StageSolver solver(problem, multirate, kappa, workers);
  march::Vector y = state.y;
  const double time = 40 * 86400.0;
  solver.solve(
      state, time, forcing, [&](std::size_t g) { return y.data() + g * layout.block(); }, [](std::size_t) {});

  std::vector<double> t0(problem.nz());
  problem.undisturbed.at(time, t0);
  march::Vector ambient(problem.groups.size() * layout.row());
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    march::ambient(problem, multirate, state, time, g, t0, {ambient.data() + g * layout.row(), layout.row()});
  }
  march::Vector rate(layout.size());
  march::implicit_rate(problem, forcing, y.data(), ambient.data(), rate.data());
  double worst = 0;
  for (std::size_t i = 0; i < y.size(); ++i) worst = std::max(worst, std::abs(y[i] - state.y[i] - kappa * rate[i]));
  return worst;
}

}  // namespace

// The answer put back into the equation. 1e-9 K: kappa times the stiffest rate (the fluid's, ~ 1/s) amplifies the
// round-off of temperatures of 300 K, 6e-14, some thousandfold.
TEST_CASE("A stage's solution satisfies its own equation, fluid flowing") {
  const auto problem = test::small_field();
  const auto flowing = test::regime(problem, 1400);
  CHECK(residual({{.to_ground = -9000}, &flowing}) < 1e-9);
}

TEST_CASE("A stage's solution satisfies its own equation, fluid stagnant") {
  const auto problem = test::small_field();
  const auto stagnant = test::regime(problem, 0);
  CHECK(residual({{}, &stagnant}) < 1e-9);
}

TEST_CASE("A short, fast bore and a slow one are solved alike") {
  const auto problem = test::small_field();
  for (const double heat_rate : {20.0, 200.0, 1e4}) {
    const auto flowing = test::regime(problem, heat_rate);
    CHECK(residual({{.to_ground = 4000}, &flowing}) < 1e-8);
  }
}

TEST_CASE("Two U's in series are solved as their equation says, with their own legs opposite and side by side") {
  auto problem = test::small_field();
  problem.passes = 2;
  for (const bool crossed : {true, false}) {
    for (const double heat_rate : {0.0, 20.0, 1400.0, 1e4}) {
      const auto regime = test::series_regime(problem, heat_rate, crossed);
      CHECK(residual({{.to_ground = heat_rate > 0 ? 4000.0 : 0.0}, &regime}, problem) < 1e-8);
    }
  }
}

TEST_CASE("A pipe within a pipe is solved as its equation says, in both directions") {
  const auto problem = test::small_field();
  for (const bool down_annulus : {true, false}) {
    for (const double heat_rate : {0.0, 20.0, 1400.0, 1e4}) {
      const auto regime = test::concentric_regime(problem, heat_rate, down_annulus);
      CHECK(residual({{.to_ground = heat_rate > 0 ? 4000.0 : 0.0}, &regime}, problem) < 1e-8);
    }
  }
}

TEST_CASE("Bores in series on a circuit hand their outlets on") {
  auto problem = test::small_field();  // the outer two, then the one between them: two circuits meet in one bore
  problem.groups[0].members = 1;
  problem.groups[0].returns = false;
  problem.groups[1].upstream = 0;
  const auto flowing = test::regime(problem, 1400);
  CHECK(residual({{.to_ground = -9000}, &flowing}, problem) < 1e-9);
}

TEST_CASE("Groups may stand, flow unequally, or not be drilled yet") {
  const auto problem = test::small_field();
  auto slow = test::regime(problem, 700), fast = test::regime(problem, 2100), stagnant = test::regime(problem, 0);
  slow.version = 5;
  CHECK(residual({{.to_ground = 4000}, nullptr, {&slow, &fast}}, problem) < 1e-9);
  CHECK(residual({{.to_ground = 4000}, nullptr, {&stagnant, &fast}}, problem) < 1e-9);
  CHECK(residual({{.to_ground = 4000}, nullptr, {&fast, nullptr}}, problem) < 1e-9);
  CHECK(residual({{}, nullptr, {&stagnant, nullptr}}, problem) < 1e-9);
}
