#include "engine/march/fused/stepper.hpp"

#include <cmath>

#include "engine/march/ambient.hpp"
#include "engine/march/arkode/stepper.hpp"
#include "engine/march/multirate.hpp"
#include "tests/catch.hpp"
#include "tests/unit/march/small_field.hpp"

using namespace stillground;

namespace {

using Regime = march::FlowRegime (*)(const march::Problem&, double heat_rate);

march::FlowRegime series(const march::Problem& problem, double heat_rate) {
  return test::series_regime(problem, heat_rate, true);
}
march::FlowRegime concentric(const march::Problem& problem, double heat_rate) {
  return test::concentric_regime(problem, heat_rate, true);
}

/// Largest difference of two steppers over some days of a load that jumps, with hours of stagnant fluid: of the state
/// and of the hours' temperatures [K].
double largest_difference(const march::Problem& problem, const march::Multirate& multirate, march::Stepper& one,
                          march::Stepper& other, Regime regime, bool second_group_waits = false) {
  const auto flowing = regime(problem, 1400), stagnant = regime(problem, 0);
  march::Workers workers(1);
  auto a = test::at_rest(problem, multirate), b = a;
  march::Vector heat_a(problem.groups.size() * march::StateLayout(problem).row()), heat_b = heat_a;
  double largest = 0;
  for (int hour = 0; hour < 150; ++hour) {
    for (auto* state : {&a, &b}) {
      if (march::update_due(problem, multirate, *state)) march::update_neighbours(problem, multirate, *state, workers);
    }
    const double load = hour % 7 == 6 ? 0 : 6000 * std::sin(hour * 0.7) - 3000;
    const auto* now = load == 0 ? &stagnant : &flowing;
    march::Forcing forcing{{.to_ground = load}, now};
    if (second_group_waits) forcing.own = {now, hour < 60 ? nullptr : hour < 100 ? &stagnant : now};
    const auto of_a = one.advance(a, forcing, heat_a), of_b = other.advance(b, forcing, heat_b);
    largest = std::max({largest, std::abs(of_a.eft - of_b.eft), std::abs(of_a.lft - of_b.lft)});
  }
  for (std::size_t i = 0; i < a.y.size(); ++i) largest = std::max(largest, std::abs(a.y[i] - b.y[i]));
  for (std::size_t i = 0; i < heat_a.size(); ++i) {
    CHECK(std::abs(heat_a[i] - heat_b[i]) < 1e-9 * (1e6 + std::abs(heat_a[i])));
  }
  return largest;
}

double from_reference(const march::Problem& problem, Regime regime, bool second_group_waits = false,
                      const march::Multirate& multirate = {}) {
  double largest = 0;
  for (const march::fused::Kernels* kernels : march::fused::available_kernels()) {
    march::Workers workers(1);
    for (const auto closure : {march::ClosureInterval::every_stage, march::ClosureInterval::every_span}) {
      const auto reference = march::make_arkode_stepper(problem, multirate, workers);
      const auto fused = march::make_fused_stepper(problem, multirate, workers, *kernels, closure);
      INFO(kernels->name << (closure == march::ClosureInterval::every_span ? ", every span" : ", every stage"));
      const double found = largest_difference(problem, multirate, *reference, *fused, regime, second_group_waits);
      CHECK(found < 1e-9);
      largest = std::max(largest, found);
    }
  }
  return largest;
}

march::Multirate two_rates(const march::Problem& problem) {
  return {.slow = march::choose_slow_modes(problem.grid, ground::stiffest_axial_rate(problem.grid))};
}

}  // namespace

// 1e-9 K: round-off of some hundred steps at 300 K. The reference is SUNDIALS' ARKODE with the same tables, its stages
// solved by code that the fused stepper does not share (march::StageSolver).
TEST_CASE("The fused stepper and the reference march alike on every instruction set") {
  CHECK(from_reference(test::small_field(), test::regime) > 0);  // not the same code twice
}

TEST_CASE("They march alike at short steps, and with rings and layers of any number") {
  from_reference(test::small_field(17), test::regime, false, {.step = 600});
  from_reference(test::small_field(40), test::regime, false, {.step = 3600});
}

TEST_CASE("They march alike with two U's in series and with a pipe within a pipe") {
  auto problem = test::small_field();
  from_reference(problem, concentric);
  problem.passes = 2;
  from_reference(problem, series);
}

TEST_CASE("They march alike while some bores are not drilled yet, and then stand still") {
  from_reference(test::small_field(), test::regime, true);
}

TEST_CASE("They march alike where one bore's outlet is the next one's inlet") {
  auto problem = test::small_field();
  problem.groups[0].members = problem.groups[1].members = 1;
  problem.groups[1].upstream = 0;
  problem.groups[0].returns = false;
  from_reference(problem, test::regime);
}

TEST_CASE("They march alike at steps of which many make an hour") {
  from_reference(test::small_field(), test::regime, false, {.step = 150});
}

TEST_CASE("With two rates, too, it is all one how often the loop is closed, and on how many threads") {
  const auto problem = test::small_field();
  const auto multirate = two_rates(problem);
  for (const march::fused::Kernels* kernels : march::fused::available_kernels()) {
    march::Workers one_thread(1), two_threads(2);
    const auto stages =
        march::make_fused_stepper(problem, multirate, one_thread, *kernels, march::ClosureInterval::every_stage);
    const auto spans =
        march::make_fused_stepper(problem, multirate, two_threads, *kernels, march::ClosureInterval::every_span);
    INFO(kernels->name);
    CHECK(largest_difference(problem, multirate, *stages, *spans, test::regime, true) < 1e-9);
  }
}

TEST_CASE("With two rates, too, what went in is what the state has gained and the surface has lost") {
  const auto problem = test::small_field();
  const auto multirate = two_rates(problem);
  REQUIRE(multirate.two_rates());
  const auto flowing = test::regime(problem, 1400), stagnant = test::regime(problem, 0);
  march::Workers workers(2);
  const auto stepper = march::make_fused_stepper(problem, multirate, workers);
  auto state = test::at_rest(problem, multirate);
  march::Vector wall_heat(problem.groups.size() * march::StateLayout(problem).row());
  const double before = test::stored(problem, flowing, state);
  double in = 0, out = 0, turned = 0;
  for (int hour = 0; hour < 24 * 200; ++hour) {
    if (march::update_due(problem, multirate, state)) march::update_neighbours(problem, multirate, state, workers);
    const double load = hour % 5 == 4 ? 0 : 6000 * std::sin(hour * 0.7) - 3000;
    const auto means = stepper->advance(state, {{.to_ground = load}, load == 0 ? &stagnant : &flowing}, wall_heat);
    in += means.to_ground * 3600;
    out += means.surface * 3600;
    turned += std::abs(load) * 3600;
  }
  CHECK(out != 0);
  CHECK(std::abs(in - (test::stored(problem, flowing, state) - before) - out) < 1e-9 * turned);
}

// Bounds of the march's own splitting, not of the physics: 0.005 K of an hour's mean at jumps of up to 100 W/m.
TEST_CASE("Two rates tell the fluid's temperature as one rate does") {
  const auto problem = test::small_field();
  const march::Multirate two = two_rates(problem), one;
  const auto flowing = test::regime(problem, 1400);
  march::Workers workers(1);
  const auto by_two = march::make_fused_stepper(problem, two, workers);
  const auto by_one = march::make_fused_stepper(problem, one, workers);
  auto a = test::at_rest(problem, two), b = test::at_rest(problem, one);
  march::Vector heat(problem.groups.size() * march::StateLayout(problem).row());
  double largest = 0;
  for (int hour = 0; hour < 24 * 120; ++hour) {
    if (march::update_due(problem, two, a)) march::update_neighbours(problem, two, a, workers);
    if (march::update_due(problem, one, b)) march::update_neighbours(problem, one, b, workers);
    const double load = 9000 * std::sin(hour * 0.9 + 2 * std::sin(hour * 0.37)) - 2000;
    const march::Forcing forcing{{.to_ground = load}, &flowing};
    largest =
        std::max(largest, std::abs(by_two->advance(a, forcing, heat).eft - by_one->advance(b, forcing, heat).eft));
  }
  INFO("largest difference " << largest << " K");
  CHECK(largest > 1e-6);  // there are two rates
  CHECK(largest < 0.005);
}

TEST_CASE("In quicker ground fewer modes are slow") {
  const auto slow = [](double conductivity) {
    const model::Ground ground{{{std::numeric_limits<double>::infinity(), "", {conductivity, 2.2e6}}},
                               model::MeanOverBore{285}};
    const auto grid = ground::make_grid({0.075, 300, 36, 1, 1.3, 8, 40}, ground.layers, {{1.5, 61.5}});
    return march::choose_slow_modes(grid, 1e-5);
  };
  CHECK(slow(1.2).count > slow(4.8).count);
  CHECK(slow(4.8).count > 0);
}

TEST_CASE("Thin layers take several axial steps in a macro-step") {
  const model::Ground ground{{{std::numeric_limits<double>::infinity(), "", {2.5, 2.2e6}}}, model::MeanOverBore{285}};
  const auto grid = ground::make_grid({0.075, 300, 36, 1, 1.3, 8, 40}, ground.layers, {{1.5, 61.5}});
  CHECK(march::choose_slow_modes(grid, 1e-6).axial_steps == 1);
  const int steps = march::choose_slow_modes(grid, 1e-3).axial_steps;
  CHECK(march::Multirate::macro_step / 2 / steps * 1e-3 <= 1);
}

TEST_CASE("A grid with few rings is stepped at one rate") {
  const model::Ground ground{{{std::numeric_limits<double>::infinity(), "", {2.5, 2.2e6}}}, model::MeanOverBore{285}};
  const auto grid = ground::make_grid({0.075, 1, 6, 1, 1.3, 8, 40}, ground.layers, {{1.5, 61.5}});
  CHECK(march::choose_slow_modes(grid, 1e-5).count == 0);
}
