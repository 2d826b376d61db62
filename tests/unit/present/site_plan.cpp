#include "tools/present/site_plan.hpp"

#include <regex>
#include <set>

#include "tests/catch.hpp"
#include "tools/present/table.hpp"

using namespace stillground;
using namespace stillground::present;
using stillground::testing::Contains;

namespace {

SitePlan grid(int rows, int columns, double spacing, Point origin = {}) {
  SitePlan plan;
  plan.id = "plan";
  for (int row = 0; row < rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      plan.bores.push_back({{origin.x + column * spacing, origin.y + row * spacing}});
      plan.bores.back().labels = {std::to_string(plan.bores.size())};
    }
  }
  return plan;
}

/// The whole numbers that stand on a picture as texts of their own.
std::set<int> numbers_on(const std::string& picture) {
  static const std::regex number(">(\\d+)</text>");
  std::set<int> found;
  for (std::sregex_iterator at(picture.begin(), picture.end(), number), end; at != end; ++at) {
    found.insert(std::stoi((*at)[1]));
  }
  return found;
}

}  // namespace

TEST_CASE("A plan writes the distance of the nearest bores and how far the field reaches, in the reader's units") {
  SitePlan plan = grid(3, 4, 6.096);
  CHECK_THAT(svg(plan), Contains(">6.10 m<") && Contains(">18.29 m<") && Contains(">12.19 m<"));
  plan.units = UnitSystem::us;
  CHECK_THAT(svg(plan), Contains(">20.00 ft<") && Contains(">60.00 ft<") && Contains(">40.00 ft<"));
}

TEST_CASE("A plan has a scale bar in metres and one in feet, whatever the reader's units") {
  SitePlan plan = grid(3, 4, 6);
  plan.units = GENERATE(UnitSystem::si, UnitSystem::us);
  const std::string picture = svg(plan);
  CHECK(std::regex_search(picture, std::regex(">[125]0* m</text>")));
  CHECK(std::regex_search(picture, std::regex(">[125]0* ft</text>")));
}

TEST_CASE("Every bore of a field of a hundred has its number, and of a large one the first and last of each row") {
  CHECK(numbers_on(svg(grid(10, 10, 6))).size() == 100);
  const std::set<int> found = numbers_on(svg(grid(25, 40, 6)));
  for (int row = 0; row < 25; ++row) {
    CHECK(found.count(40 * row + 1) == 1);
    CHECK(found.count(40 * row + 40) == 1);
  }
}

TEST_CASE("A plan names all its bores or none") {
  SitePlan roomy = grid(1, 3, 6), crowded = grid(12, 12, 6);
  for (SitePlan* plan : {&roomy, &crowded}) {
    for (PlanBore& bore : plan->bores) bore.labels.insert(bore.labels.begin(), "north " + bore.labels.front());
  }
  CHECK_THAT(svg(roomy), Contains(">north 1<") && Contains(">north 2<") && Contains(">north 3<"));
  CHECK_THAT(svg(crowded), !Contains("north"));
  CHECK(numbers_on(svg(crowded)).count(1) == 1);
}

TEST_CASE("Each later phase has a mark of its own, with its date in the legend") {
  SitePlan plan = grid(1, 6, 6);
  for (int phase = 0; phase < 6; ++phase) {
    plan.bores[static_cast<std::size_t>(phase)].phase = phase;
    plan.phase_texts.push_back("from " + std::to_string(2030 + phase));
  }
  const std::string picture = svg(plan);
  CHECK_THAT(picture, Contains(">from 2030<") && Contains(">from 2031<") && Contains(">from 2032<") &&
                          Contains(">from 2033<") && Contains(">from 2034, or from 2035<"));
  const std::regex hollow("<(circle|path)[^>]*fill=\"#ffffff\"");
  const auto marks = std::distance(std::sregex_iterator(picture.begin(), picture.end(), hollow), {});
  CHECK(marks == 5 + 4);  // the bores', and the legend's: two phases share the last one
}

TEST_CASE("A plan looks the same wherever its coordinates begin") {
  CHECK(svg(grid(3, 4, 6.25)) == svg(grid(3, 4, 6.25, {32456789.125, 5634505.5})));
}

TEST_CASE("A coordinate is written to a micrometre, however large it is") {
  const Column map{.name = "x", .units = "m", .on_the_map = true};
  CHECK(for_machines(5634505.123456, map) == "5634505.123456");
  CHECK(for_machines(6, map) == "6");
  CHECK(for_machines(0, map) == "0");
  CHECK(for_machines(-1e-12, map) == "0");
  CHECK(for_machines(1200, map) == "1200");
  CHECK(for_machines(5634505.123456, {"x", "m"}) == "5634505.123");
}
