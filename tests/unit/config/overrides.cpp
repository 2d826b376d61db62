#include "engine/config/overrides.hpp"

#include <fstream>

#include "tests/catch.hpp"
#include "tests/unit/config/edited.hpp"

using namespace stillground;
using namespace stillground::config;
using stillground::testing::Contains;
using stillground::testing::make_broken;
using stillground::testing::Scratch;

namespace {

const Place at{"plan.yaml", 7, 3};

model::Scenario read_with(const std::vector<Override>& overrides) {
  const Scratch scratch;
  return read_scenario(make_broken({"", {}, ""}, scratch.folder), std::nullopt, {}, overrides);
}

std::string refusal(const Override& given) {
  try {
    read_with({given});
  } catch (const InputError& error) {
    return error.what();
  }
  return "accepted";
}

Override block(const std::string& path, const std::string& yaml) {
  return {path, at, read_tree(yaml, "plan.yaml")};
}

}  // namespace

TEST_CASE("A plan's value stands in place of the scenario's, the other keys stay", "[config]") {
  const model::Scenario plain = read_with({});
  const model::Scenario changed = read_with({plain_override("bore.depth", "87 m", at)});
  CHECK(changed.bore.depth == Approx(87));
  CHECK(plain.bore.depth != Approx(87));
  CHECK(changed.bore.top == plain.bore.top);
  CHECK(changed.place("bore.depth").text() == "plan.yaml:7:3");
}

TEST_CASE("A plan's value may stand at a key that the scenario leaves out, and in an item of a list", "[config]") {
  CHECK(read_with({plain_override("flow.in_series", "2", at)}).flow.in_series == 2);
  const auto scenario = read_with({plain_override("ground.layers[1].conductivity", "1.75 W/(m K)", at)});
  CHECK(scenario.ground.layers[0].solid.conductivity == Approx(1.75));
}

TEST_CASE("A whole block of a plan takes the place of the scenario's", "[config]") {
  const auto scenario = read_with({block("field", "ring: {bores: 5, spacing: 6 m}")});
  CHECK(std::get<model::Ring>(scenario.layout).bores == 5);
}

TEST_CASE("What is wrong with a plan's value is said at its place in the plan, as in a scenario", "[config]") {
  CHECK_THAT(refusal(plain_override("bore.dept", "87 m", at)),
             Contains("plan.yaml:7:3: bore.dept: unknown key (did you mean \"depth\"?)"));
  CHECK_THAT(refusal(plain_override("bor.depth", "87 m", at)),
             Contains("plan.yaml:7:3: bor: unknown key (did you mean \"bore\"?)"));
  CHECK_THAT(refusal(plain_override("bore.depth", "87 W", at)), Contains("plan.yaml:7:3: bore.depth: \"87 W\" is not"));
  CHECK_THAT(refusal(plain_override("bore.depth", "2 m", at)), Contains("out of range"));
  CHECK_THAT(refusal(plain_override("bore", "87 m", at)), Contains("a map of keys is expected"));
  CHECK_THAT(refusal(block("field", "ring: {bores: 5, spacin: 6 m}")), Contains("plan.yaml:1:18: field.ring.spacin"));
  CHECK_THAT(refusal(plain_override("bore..depth", "87 m", at)), Contains("not a path of keys"));
  CHECK_THAT(refusal(plain_override("bore.depth.to", "87 m", at)), Contains("below a plain value"));
  CHECK_THAT(refusal(plain_override("bore[1].depth", "87 m", at)), Contains("is no list"));
  CHECK_THAT(refusal(plain_override("ground.layers[9].to", "87 m", at)), Contains("items in this scenario"));
  CHECK_THAT(refusal(plain_override("ground.layers[x].to", "87 m", at)), Contains("is not an item of a list"));
}

TEST_CASE("A tree that is written out is read as the same tree", "[config]") {
  const Node tree = read_tree(
      "a: {\"-5 degC\": 3.0, b: []}\nc:\n  - x: 1\n    y: \"p: q # \\\"r\\\"\"\n  - {}\n  - [1, [2, 3]]\n"
      "d: \"~\"\ne: \"\"\nf: 'it''s'\ng: -2 degC\nh: \"- x\"\ni: ~\n",
      "f.yaml");
  const std::string once = written(tree);
  const Node again = read_tree(once, "f.yaml");
  CHECK(on_one_line(again) == on_one_line(tree));
  CHECK(on_one_line(again.entries[1].value) == "[{x: 1, y: \"p: q # \\\"r\\\"\"}, {}, [1, [2, 3]]]");
  CHECK(again.entries[2].value.text == "~");
  CHECK(again.entries.back().value.kind == Node::Kind::none);
}

TEST_CASE("The text of a scenario with a plan's values says which, and is read to the same scenario", "[config]") {
  const Scratch scratch;
  const auto file = make_broken({"", {}, ""}, scratch.folder);
  const auto changed = read_scenario(file, std::nullopt, {}, {plain_override("bore.depth", "87 m", at)});
  CHECK_THAT(changed.text, Contains("# site.yaml with\n#   bore.depth: 87 m\n"));
  std::ofstream(scratch.folder / "again.yaml") << changed.text;
  const auto again = read_scenario(scratch.folder / "again.yaml");
  CHECK(again.bore.depth == changed.bore.depth);
  CHECK(again.ground.layers.size() == changed.ground.layers.size());
  CHECK(again.limits.size() == changed.limits.size());
}
