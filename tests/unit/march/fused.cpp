#include "engine/march/fused/stepper.hpp"

#include <cmath>

#include "engine/march/ambient.hpp"
#include "engine/march/arkode/stepper.hpp"
#include "engine/march/clocks.hpp"
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

/// Largest difference of two steppers over some days of a load that jumps, with hours of standing fluid: of the state
/// and of the hours' temperatures [K].
double largest_difference(const march::Problem& problem, march::Stepper& one, march::Stepper& other, Regime regime,
                          bool second_group_waits = false) {
  const auto flowing = regime(problem, 1400), standing = regime(problem, 0);
  march::Workers workers(1);
  auto a = test::at_rest(problem), b = a;
  march::Vector heat_a(problem.groups.size() * problem.row()), heat_b = heat_a;
  double largest = 0;
  for (int hour = 0; hour < 150; ++hour) {
    for (auto* state : {&a, &b}) {
      if (march::refresh_due(problem, *state)) march::refresh_neighbours(problem, *state, workers);
    }
    const double load = hour % 7 == 6 ? 0 : 6000 * std::sin(hour * 0.7) - 3000;
    const auto* now = load == 0 ? &standing : &flowing;
    march::Task task{{0, 0, 0, load}, now};
    if (second_group_waits) task.own = {now, hour < 60 ? nullptr : hour < 100 ? &standing : now};
    const auto of_a = one.advance(a, task, heat_a), of_b = other.advance(b, task, heat_b);
    largest = std::max({largest, std::abs(of_a.eft - of_b.eft), std::abs(of_a.lft - of_b.lft)});
  }
  for (std::size_t i = 0; i < a.y.size(); ++i) largest = std::max(largest, std::abs(a.y[i] - b.y[i]));
  for (std::size_t i = 0; i < heat_a.size(); ++i) {
    CHECK(std::abs(heat_a[i] - heat_b[i]) < 1e-9 * (1e6 + std::abs(heat_a[i])));
  }
  return largest;
}

double from_reference(const march::Problem& problem, Regime regime, bool second_group_waits = false) {
  double largest = 0;
  for (const march::fused::Kernels* kernels : march::fused::available_kernels()) {
    march::Workers workers(1);
    for (const auto meetings : {march::Meetings::every_stage, march::Meetings::every_span}) {
      const auto reference = march::make_arkode_stepper(problem, workers);
      const auto fused = march::make_fused_stepper(problem, workers, *kernels, meetings);
      INFO(kernels->name << (meetings == march::Meetings::every_span ? ", every span" : ", every stage"));
      const double found = largest_difference(problem, *reference, *fused, regime, second_group_waits);
      CHECK(found < 1e-9);
      largest = std::max(largest, found);
    }
  }
  return largest;
}

march::Problem two_clocks(double days_of_refresh = 1) {
  march::Problem problem = test::small_field();
  problem.refresh = days_of_refresh * 86400;
  problem.clocks = march::choose_clocks(problem.grid, ground::stiffest_axial_rate(problem.grid));
  return problem;
}

}  // namespace

// 1e-9 K: round-off of some hundred steps at 300 K. The reference is SUNDIALS' ARKODE with the same tables, its stages
// solved by code that the fused stepper does not share (march::StageSolver).
TEST_CASE("The fused stepper and the reference march alike on every instruction set") {
  CHECK(from_reference(test::small_field(), test::regime) > 0);  // not the same code twice
}

TEST_CASE("They march alike at short steps, and with rings and layers of any number") {
  from_reference(test::small_field(600, 17), test::regime);
  from_reference(test::small_field(3600, 40), test::regime);
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
  from_reference(test::small_field(150), test::regime);
}

TEST_CASE("With two clocks, too, it is all one how often field and heat pumps meet, and on how many threads") {
  const auto problem = two_clocks();
  for (const march::fused::Kernels* kernels : march::fused::available_kernels()) {
    march::Workers one_thread(1), two_threads(2);
    const auto stages = march::make_fused_stepper(problem, one_thread, *kernels, march::Meetings::every_stage);
    const auto spans = march::make_fused_stepper(problem, two_threads, *kernels, march::Meetings::every_span);
    INFO(kernels->name);
    CHECK(largest_difference(problem, *stages, *spans, test::regime, true) < 1e-9);
  }
}

TEST_CASE("With two clocks, too, what went in is what the state has gained and the surface has lost") {
  const auto problem = two_clocks();
  REQUIRE(problem.clocks.two());
  const auto flowing = test::regime(problem, 1400), standing = test::regime(problem, 0);
  march::Workers workers(2);
  const auto stepper = march::make_fused_stepper(problem, workers);
  auto state = test::at_rest(problem);
  march::Vector wall_heat(problem.groups.size() * problem.row());
  const double before = test::stored(problem, flowing, state);
  double in = 0, out = 0, turned = 0;
  for (int hour = 0; hour < 24 * 200; ++hour) {
    if (march::refresh_due(problem, state)) march::refresh_neighbours(problem, state, workers);
    const double load = hour % 5 == 4 ? 0 : 6000 * std::sin(hour * 0.7) - 3000;
    const auto means = stepper->advance(state, {{0, 0, 0, load}, load == 0 ? &standing : &flowing}, wall_heat);
    in += means.to_ground * 3600;
    out += means.surface * 3600;
    turned += std::abs(load) * 3600;
  }
  CHECK(out != 0);
  CHECK(std::abs(in - (test::stored(problem, flowing, state) - before) - out) < 1e-9 * turned);
}

// Bounds of the march's own splitting, not of the physics: 0.005 K of an hour's mean at jumps of up to 100 W/m.
TEST_CASE("Two clocks tell the fluid's temperature as one clock does") {
  const auto slow = two_clocks();
  auto one = slow;
  one.clocks = {};
  const auto flowing = test::regime(slow, 1400);
  march::Workers workers(1);
  const auto by_two = march::make_fused_stepper(slow, workers), by_one = march::make_fused_stepper(one, workers);
  auto a = test::at_rest(slow), b = test::at_rest(one);
  march::Vector heat(slow.groups.size() * slow.row());
  double largest = 0;
  for (int hour = 0; hour < 24 * 120; ++hour) {
    if (march::refresh_due(slow, a)) march::refresh_neighbours(slow, a, workers);
    if (march::refresh_due(one, b)) march::refresh_neighbours(one, b, workers);
    const double load = 9000 * std::sin(hour * 0.9 + 2 * std::sin(hour * 0.37)) - 2000;
    const march::Task task{{0, 0, 0, load}, &flowing};
    largest = std::max(largest, std::abs(by_two->advance(a, task, heat).eft - by_one->advance(b, task, heat).eft));
  }
  INFO("largest difference " << largest << " K");
  CHECK(largest > 1e-6);  // there are two clocks
  CHECK(largest < 0.005);
}

TEST_CASE("In quicker ground fewer modes are slow") {
  const auto clocks = [](double conductivity) {
    const model::Ground ground{{{std::numeric_limits<double>::infinity(), "", {conductivity, 2.2e6}}},
                               model::MeanOverBore{285}};
    const auto grid = ground::make_grid({0.075, 300, 36, 1, 1.3, 8, 40}, ground.layers, {{1.5, 61.5}});
    return march::choose_clocks(grid, 1e-5);
  };
  CHECK(clocks(1.2).slow > clocks(4.8).slow);
  CHECK(clocks(4.8).two());
}

TEST_CASE("Thin layers take several axial steps on the slow clock") {
  const model::Ground ground{{{std::numeric_limits<double>::infinity(), "", {2.5, 2.2e6}}}, model::MeanOverBore{285}};
  const auto grid = ground::make_grid({0.075, 300, 36, 1, 1.3, 8, 40}, ground.layers, {{1.5, 61.5}});
  CHECK(march::choose_clocks(grid, 1e-6).axial_steps == 1);
  const int steps = march::choose_clocks(grid, 1e-3).axial_steps;
  CHECK(march::Clocks::slow_step / 2 / steps * 1e-3 <= 1);
}

TEST_CASE("A grid with few rings has one clock") {
  const model::Ground ground{{{std::numeric_limits<double>::infinity(), "", {2.5, 2.2e6}}}, model::MeanOverBore{285}};
  const auto grid = ground::make_grid({0.075, 1, 6, 1, 1.3, 8, 40}, ground.layers, {{1.5, 61.5}});
  CHECK(!march::choose_clocks(grid, 1e-5).two());
}
