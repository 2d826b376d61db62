#include "engine/assembly/assembly.hpp"

#include <optional>
#include <utility>

#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

namespace {

std::vector<double> eft_of_a_day(const assembly::Assembly& assembly) {
  simulation::Simulation simulation(assembly, 1);
  std::vector<double> eft;
  for (int hour = 0; hour < 24; ++hour) eft.push_back(simulation.march_hour().eft);
  return eft;
}

}  // namespace

TEST_CASE("What becomes of the scenario after assembling is nothing to the assembly") {
  auto given = std::make_optional(test::scenario(1, 2));
  const assembly::Assembly assembly = assembly::assemble(*given);
  const auto expected = eft_of_a_day(assembly);
  given->run.years = 7;
  given->bore.depth = 50;
  given->flow.runs = model::Flow::Runs::always;
  CHECK(assembly.hours() == hours_per_year);
  CHECK(assembly::drill_length(assembly) == 2 * (90 + 1.8));
  CHECK(eft_of_a_day(assembly) == expected);
  given.reset();  // under the sanitizer of addresses: what is gone is not read
  CHECK(eft_of_a_day(assembly) == expected);
}

TEST_CASE("An assembly made of a passing scenario, copied or moved, marches as it would have stayed") {
  assembly::Assembly first = assembly::assemble(test::scenario(1, 2));
  const auto expected = eft_of_a_day(first);
  const assembly::Assembly copy = first;
  const assembly::Assembly moved = std::move(first);
  CHECK(eft_of_a_day(copy) == expected);
  CHECK(eft_of_a_day(moved) == expected);
}
