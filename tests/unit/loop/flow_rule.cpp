#include "engine/loop/flow_rule.hpp"

#include "tests/catch.hpp"

using namespace stillground;
using model::Flow;

namespace {

Flow flow(Flow::Varies varies, Flow::Runs runs = Flow::Runs::with_load) {
  Flow f;
  f.varies = varies;
  f.runs = runs;
  f.least = 0.4;
  f.stages = 3;
  return f;
}

}  // namespace

TEST_CASE("A pump that runs with the load stands in idle hours, and one that always runs does not") {
  for (const auto varies : {Flow::Varies::never, Flow::Varies::with_load, Flow::Varies::in_stages}) {
    CHECK(loop::flow_part(flow(varies), 0) == 0);
    CHECK(loop::flow_part(flow(varies, Flow::Runs::always), 0) > 0);
  }
}

TEST_CASE("Flow in proportion to the load keeps its floor") {
  CHECK(loop::flow_part(flow(Flow::Varies::with_load), 0.1) == 0.4);
  CHECK(loop::flow_part(flow(Flow::Varies::with_load), 0.7) == 0.7);
  CHECK(loop::flow_part(flow(Flow::Varies::with_load), 1) == 1);
}

TEST_CASE("In stages a pump starts with the heat pump that the load needs") {
  CHECK(loop::flow_part(flow(Flow::Varies::in_stages), 0.01) == Approx(1.0 / 3));
  CHECK(loop::flow_part(flow(Flow::Varies::in_stages), 1.0 / 3) == Approx(1.0 / 3));
  CHECK(loop::flow_part(flow(Flow::Varies::in_stages), 0.34) == Approx(2.0 / 3));
  CHECK(loop::flow_part(flow(Flow::Varies::in_stages), 1) == 1);
}
