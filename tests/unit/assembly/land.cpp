#include "engine/assembly/land.hpp"

#include "tests/catch.hpp"

using namespace stillground;
using stillground::testing::Contains;
using stillground::testing::Equals;

namespace {

/// A plot of 40 m by 30 m with a house of 10 m by 10 m in its middle, bores given.
model::Scenario on_plot(const std::vector<model::PlanPoint>& bores) {
  model::Positions positions;
  for (const auto& at : bores) positions.sites.push_back({at.x, at.y, 1.5, 100});
  positions.land =
      model::Land{{{0, 0}, {40, 0}, {40, 30}, {0, 30}}, 3, {{{{15, 10}, {25, 10}, {25, 20}, {15, 20}}, 2}}};
  model::Scenario scenario;
  scenario.layout = positions;
  return scenario;
}

}  // namespace

TEST_CASE("Surveyed bores that keep their setbacks are not warned of") {
  CHECK(assembly::land_warnings(on_plot({{3, 3}, {37, 27}, {20, 8}})).empty());
  CHECK(assembly::land_warnings(on_plot({{2.9995, 3}, {37, 27}})).empty());  // a survey is read to a millimetre
}

TEST_CASE("The surveyed bore that keeps least from the outline is warned of, outside or within the setback") {
  const auto near = assembly::land_warnings(on_plot({{3, 3}, {1.5, 15}, {2, 20}}));
  REQUIRE(near.size() == 1);
  CHECK_THAT(near[0].text, Equals("bore 2 stands 1.50 m from the plot's outline, nearer than its setback of 3.00 m; "
                                  "1 more stands too near as well"));
  auto scenario = on_plot({{3, 3}, {-1.2, 15}});
  std::get<model::Positions>(scenario.layout).sites[1].name = "B";
  scenario.units = UnitSystem::us;
  const auto outside = assembly::land_warnings(scenario);
  REQUIRE(outside.size() == 1);
  CHECK_THAT(outside[0].text, Equals("bore 2 (B) stands 3.94 ft outside the plot's outline"));
}

TEST_CASE("A surveyed bore in or near what is kept clear is warned of") {
  const auto in = assembly::land_warnings(on_plot({{3, 3}, {20, 11}}));
  REQUIRE(in.size() == 1);
  CHECK_THAT(in[0].text, Equals("bore 2 stands 1.00 m inside field.plot.keep_clear[1]"));
  const auto near = assembly::land_warnings(on_plot({{3, 3}, {20, 9}}));
  REQUIRE(near.size() == 1);
  CHECK_THAT(near[0].text, Contains("1.00 m from field.plot.keep_clear[1], nearer than its setback of 2.00 m"));
}

TEST_CASE("Bores that all stand outside their plot were measured from another origin") {
  CHECK_THROWS_WITH(assembly::land_warnings(on_plot({{103, 3}, {137, 27}})), Contains("measured from one origin"));
}
