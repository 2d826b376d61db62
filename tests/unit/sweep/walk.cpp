#include "tools/sweep/walk.hpp"

#include "tests/catch.hpp"
#include "tests/unit/sweep/planned.hpp"

using namespace stillground;
using namespace stillground::sweep;
using stillground::testing::Contains;
using stillground::testing::Planned;

using Choice = std::vector<std::size_t>;

TEST_CASE("Crossed keys are walked as nested loops, the last one innermost") {
  const Planned planned("vary: {bore.depth: [90 m, 100 m], field.grid.spacing: [5 m, 6 m, 7 m]}\n");
  const Plan plan = planned.read();
  const Walk walk(plan);
  REQUIRE(walk.count() == 6);
  CHECK(walk.choice(1) == Choice{0, 0});
  CHECK(walk.choice(2) == Choice{0, 1});
  CHECK(walk.choice(4) == Choice{1, 0});
  CHECK(walk.choice(6) == Choice{1, 2});
  CHECK(config::on_one_line(walk.overrides(walk.choice(6))[1].value) == "7 m");
}

TEST_CASE("Paired keys are walked together and need as many values") {
  const Planned planned("paired: true\nvary: {bore.depth: [90 m, 100 m], field.grid.spacing: [5 m, 6 m]}\n");
  const Plan plan = planned.read();
  const Walk walk(plan);
  CHECK(walk.count() == 2);
  CHECK(walk.choice(2) == Choice{1, 1});
  const Planned uneven("paired: true\nvary: {bore.depth: [90 m, 100 m], field.grid.spacing: [5 m]}\n");
  CHECK_THROWS_WITH(uneven.read(), Contains("vary.field.grid.spacing: has 1 values where bore.depth has 2"));
}

TEST_CASE("One response serves the points that differ in loads, grout, fluid or flow alone") {
  const Planned planned(
      "vary: {bore.grout.conductivity: [1 W/(m K), 2 W/(m K)], bore.depth: [90 m, 100 m], flow.per_bore: [0.3 L/s, 0.4 "
      "L/s]}\n");
  const Plan plan = planned.read();
  const Walk walk(plan);
  CHECK(walk.middle(1) == 1);
  CHECK(walk.middle(2) == 1);  // another flow
  CHECK(walk.middle(3) == 3);  // another depth
  CHECK(walk.middle(5) == 1);  // another grout
  CHECK(walk.middle(8) == 3);
  CHECK(walk.served_by(1) == 4);
  for (const char* path : {"field", "field.grid.spacing", "bore", "bore.depth", "bore.top", "bore.diameter",
                           "run.years", "ground", "flow.in_series", "ground.layers[1].conductivity", "loadsx"}) {
    CHECK_FALSE(keeps_geometry(path));
  }
}
