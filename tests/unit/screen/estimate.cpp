#include "engine/screen/estimate.hpp"

#include <cmath>

#include "engine/screen/own_error.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;
using stillground::testing::Contains;

namespace {

model::Scenario small_site(int rows = 1, int columns = 1) {
  auto s = test::scenario(rows, columns);
  s.bore.depth = 60;
  return s;
}

/// All hours of a screening estimate.
std::vector<record::Hour> hours_of(const assembly::Assembly& assembly) {
  std::vector<record::Hour> hours;
  screen::estimate(assembly,
                   [&](std::span<const record::Hour> year) { hours.insert(hours.end(), year.begin(), year.end()); });
  return hours;
}

}  // namespace

TEST_CASE("Without load and season the fluid stays as warm as the ground") {
  auto s = small_site();
  s.ground.undisturbed = model::MeanOverBore{284};
  s.loads = model::ConstantGroundLoad{0};
  s.heat_pump.reset();
  s.flow.runs = model::Flow::Runs::always;
  const auto hours = hours_of(assembly::assemble(s));
  REQUIRE(hours.size() == 8760);
  for (const auto& hour : hours) REQUIRE(hour.eft == Approx(284).margin(1e-6));
}

TEST_CASE("The first months of a pair of bores are within 0.15 K of the march in any hour with load") {
  const auto s = small_site(1, 2);
  const assembly::Assembly assembly = assembly::assemble(s);
  const auto hours = hours_of(assembly);
  simulation::Simulation march(assembly, 1);
  double sum = 0, flowing = 0;
  for (std::size_t hour = 0; hour < 2000; ++hour) {
    const record::Hour there = march.march_hour();
    const record::Hour& here = hours[hour];
    REQUIRE(here.flow == Approx(there.flow));
    CHECK(here.heating == there.heating);
    if (there.flow == 0) continue;
    REQUIRE(std::abs(here.eft - there.eft) < 0.15);
    REQUIRE(here.lft - here.eft == Approx(there.lft - there.eft).margin(0.02));
    sum += here.eft - there.eft;
    ++flowing;
  }
  REQUIRE(flowing > 500);
  CHECK(std::abs(sum / flowing) < 0.02);
}

TEST_CASE("Bores half a metre apart are screened without their answers to each other running away") {
  auto s = small_site(5, 5);
  s.layout = model::Grid{5, 5, 0.5};
  s.loads = test::building(10000);
  s.run.years = 20;
  const assembly::Assembly assembly = assembly::assemble(s);
  const auto hours = hours_of(assembly);
  simulation::Simulation march(assembly, 1);
  for (std::size_t hour = 0; hour < 2000; ++hour) {
    const record::Hour there = march.march_hour();
    if (there.flow > 0) REQUIRE(std::abs(hours[hour].eft - there.eft) < 0.5);
  }
  // Steady from year to year but for what the ground still gives: far from the 1e10 K that it grew to.
  for (std::size_t hour = 0; hour < hours.size(); ++hour) REQUIRE(std::abs(hours[hour].eft - 283) < 30);
}

TEST_CASE("Bores that all but touch are refused where a screening would never come to its end") {
  auto s = small_site(2, 2);
  s.layout = model::Grid{2, 2, 0.151};
  s.run.years = 25;
  const assembly::Assembly assembly = assembly::assemble(s);
  try {
    hours_of(assembly);
    FAIL("not refused");
  } catch (const InputError& error) {
    CHECK(error.key() == "run.method");
  }
}

TEST_CASE("Screening refuses bores that one step response cannot tell of") {
  auto s = small_site();
  s.layout = model::Positions{{{0, 0, 1.8, 60, 0}, {6, 0, 1.8, 60, seconds_per_year / 2}}};
  CHECK_THROWS_WITH(hours_of(assembly::assemble(s)), Contains("run.method") && Contains("method: march"));
}

TEST_CASE("A screening says how far it may be off a march, and is not") {
  auto s = small_site(2, 2);
  s.run.years = 2;
  const assembly::Assembly assembly = assembly::assemble(s);
  std::vector<record::Hour> hours;
  const auto take = [&](std::span<const record::Hour> year) { hours.insert(hours.end(), year.begin(), year.end()); };
  const screen::Estimate estimate = screen::estimate(assembly, take);
  const record::ScreeningError error = screen::own_error(assembly, estimate);
  simulation::Simulation march(assembly, 1);
  double largest = 0;
  for (const record::Hour& screened : hours) {
    const record::Hour marched = march.march_hour();
    if (marched.flow > 0) largest = std::max(largest, std::abs(screened.eft - marched.eft));
  }
  CHECK(largest > 0);
  CHECK(largest < error.hour);
  CHECK(error.month < error.hour);
  CHECK(error.hour < 0.2);
}
