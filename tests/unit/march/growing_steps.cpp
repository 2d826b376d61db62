#include "engine/march/growing_steps.hpp"

#include <algorithm>
#include <cmath>

#include "engine/ground/grid.hpp"
#include "engine/march/arkode/stepper.hpp"
#include "engine/march/tableau.hpp"
#include "tests/catch.hpp"
#include "tests/unit/march/small_field.hpp"

using namespace stillground;

// The same scheme with steps of other lengths: at equal steps only the order of additions differs, 1e-9 K as between
// the steppers of a run.
TEST_CASE("Steps that do not grow are the steps of a run") {
  const march::Problem problem = test::small_field();
  const march::Multirate multirate;
  const march::FlowRegime regime = test::regime(problem, 1400);
  const march::Forcing forcing{{.to_ground = 9000}, &regime};
  march::Workers workers(1);
  const auto stepper = march::make_arkode_stepper(problem, multirate, workers);
  march::State run = test::at_rest(problem);
  march::Vector heat(problem.groups.size() * march::StateLayout(problem).row());
  for (int hour = 0; hour < 6; ++hour) stepper->advance(run, forcing, heat);

  march::GrowingSteps steps(problem, multirate, forcing, test::at_rest(problem));
  int seen = 0;
  steps.march({3600, 6 * 3600.0}, 1800, 1800, [&](double) { ++seen; });
  CHECK(seen == 2);
  CHECK(steps.state().time == Approx(6 * 3600.0));
  double worst = 0;
  for (std::size_t i = 0; i < run.y.size(); ++i) worst = std::max(worst, std::abs(run.y[i] - steps.state().y[i]));
  CHECK(worst < 1e-9);
}

// Second order in the step: of a rise of some kelvins a step of a fiftieth of the time gone by may lose (1/50)^2/10 or
// so, 1e-4 K; measured against steps of a two-hundredth.
TEST_CASE("Steps that grow with the time gone by lose little") {
  const march::Problem problem = test::small_field();
  const march::Multirate multirate;
  const march::FlowRegime regime = test::regime(problem, 1400);
  const march::Forcing forcing{{.to_ground = 9000}, &regime};
  march::GrowingSteps coarse(problem, multirate, forcing, test::at_rest(problem)),
      fine(problem, multirate, forcing, test::at_rest(problem));
  coarse.march({86400}, 60, 86400, [](double) {});
  fine.march(
      {86400}, 60, 86400, [](double) {}, 0.005);
  CHECK(std::abs(coarse.operating_point().eft - fine.operating_point().eft) < 1e-4);
}

// Both are second order in the step; the factors bear steps of weeks where the explicit part bears days. Over
// three years the mean wall is some kelvins up: 0.002 K of it.
TEST_CASE("Axial conduction by factors is that of small explicit steps, at steps that these could not bear") {
  const march::Problem problem = test::small_field();
  const march::Multirate multirate;
  const march::FlowRegime regime = test::regime(problem, 1400);
  const march::Forcing forcing{{.to_ground = 9000}, &regime};
  march::GrowingSteps within(problem, multirate, forcing, test::at_rest(problem)),
      factored(problem, multirate, forcing, test::at_rest(problem), march::GrowingSteps::Axial::by_factors);
  const double most = 0.9 * march::ars222::real_stability / ground::stiffest_axial_rate(problem.grid);
  const double end = 1095 * 86400.0, longest = 25 * 86400.0;
  REQUIRE(longest > 2 * most);
  within.march(
      {end}, 60, 86400, [](double) {}, 0.005);
  factored.march({end}, 60, longest, [](double) {});
  CHECK(std::abs(factored.operating_point().eft - within.operating_point().eft) < 2e-3);
}
