#include "engine/simulation/make_stepper.hpp"

#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;
using Catch::Matchers::Contains;

TEST_CASE("A build without the reference stepper refuses the scenario that asks for it, at its key", "[simulation]") {
  model::Scenario s = test::scenario(1, 1);
  s.places["run.stepper"] = {"site.yaml", 33, 12};
  CHECK_NOTHROW(simulation::refuse_missing_stepper(s, false));
  s.run.stepper = model::Run::Stepper::reference;
  CHECK_NOTHROW(simulation::refuse_missing_stepper(s, true));
  CHECK_THROWS_AS(simulation::refuse_missing_stepper(s, false), InputError);
  CHECK_THROWS_WITH(simulation::refuse_missing_stepper(s, false),
                    Contains("site.yaml:33:12: run.stepper: ") && Contains("\"automatic\" is allowed"));
}
