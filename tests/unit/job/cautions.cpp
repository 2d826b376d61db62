#include "engine/job/cautions.hpp"

#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;
using stillground::testing::Contains;

namespace {

bool says(const model::Scenario& scenario, const std::string& what) {
  const auto texts = job::cautions(scenario);
  return std::any_of(texts.begin(), texts.end(),
                     [&](const std::string& text) { return text.find(what) != std::string::npos; });
}

}  // namespace

TEST_CASE("Every antifreeze is cautioned of first, water is not") {
  auto s = test::scenario(1, 1);
  for (const auto& [base, word] : std::vector<std::pair<model::Antifreeze, std::string>>{
           {model::Antifreeze::propylene_glycol, "needs a permit in many places"},
           {model::Antifreeze::ethylene_glycol, "poisonous"},
           {model::Antifreeze::ethanol, "ethanol burns"},
           {model::Antifreeze::methanol, "methanol burns with a flame hard to see and is poisonous"},
           {model::Antifreeze::potassium_acetate, "no galvanised pipe"}}) {
    s.fluid.base = base;
    CHECK_THAT(job::cautions(s).front(), Contains(word));
  }
  s.fluid.base = model::Antifreeze::none;
  CHECK_FALSE(says(s, "Antifreeze: "));
}

TEST_CASE("Deep bores are cautioned of by the deepest toe, surveyed ones too") {
  auto s = test::scenario(1, 1);
  s.bore.depth = 140;
  CHECK_FALSE(says(s, "Deep bores"));
  s.bore.depth = 160;
  CHECK(says(s, "Deep bores"));
  s.bore.depth = 100;
  s.layout = model::Positions{{{0, 0, 1, 100}, {6, 0, 1, 160}}};
  CHECK(says(s, "Deep bores"));
}

TEST_CASE("Frost is cautioned of where a limit allows it, or none forbids it to a fluid that bears it") {
  auto s = test::scenario(1, 1);
  s.fluid.base = model::Antifreeze::ethanol;
  s.limits.clear();
  CHECK(says(s, "Frost"));
  s.limits = {{"eft_min", model::Limit::Quantity::eft, model::Limit::Side::least, model::Limit::Over::hour, 275.15}};
  CHECK_FALSE(says(s, "Frost"));
  s.limits.front().value = 271.15;
  CHECK(says(s, "Frost"));
}

TEST_CASE("Ground by a catalogue's name is cautioned of as no measurement") {
  auto s = test::scenario(1, 1);
  CHECK_FALSE(says(s, "catalogue"));
  s.ground.layers.back().source = "a table";
  CHECK(says(s, "values from a catalogue are no measurement; verify them by a thermal response test"));
}

TEST_CASE("What holds for every field is always said, and the last word is that no design is replaced") {
  const auto s = test::scenario(1, 1);
  CHECK(says(s, "thermal response test"));
  CHECK(says(s, "hydrostatic"));
  CHECK(says(s, "bores wander"));
  CHECK_THAT(job::cautions(s).back(), Contains("local codes") && Contains("does not replace one"));
}
