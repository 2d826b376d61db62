#include <fstream>
#include <nlohmann/json.hpp>

#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/unit/base/scratch.hpp"

using namespace stillground::testing;

TEST_CASE("new writes a scenario that check accepts as it stands, and warns of the load that is only an example") {
  const Scratch scratch;
  REQUIRE(run({"stillground", "new", "site.yaml"}, scratch.folder).status == 0);
  const Outcome checked = run({"stillground", "check", "site.yaml"}, scratch.folder);
  INFO(checked.err);
  CHECK(checked.status == 0);
  CHECK_THAT(checked.out, Contains("13.5 kW is the load of the scenario that `stillground new` writes"));
}

TEST_CASE("new writes the same to standard output, with a remark for those who read it") {
  const Scratch scratch;
  REQUIRE(run({"stillground", "new", "site.yaml"}, scratch.folder).status == 0);
  const Outcome shown = run({"stillground", "new", "-"}, scratch.folder);
  CHECK(shown.out == bytes(scratch.folder / "site.yaml"));
  CHECK_THAT(shown.out, Contains("# half the yearly range") && Contains("  # cooling_cop: "));
}

TEST_CASE("The editors' schema in configs is the one that new --schema writes") {
  const Scratch scratch;
  REQUIRE(run({"stillground", "new", "--schema", "keys.json"}, scratch.folder).status == 0);
  CHECK(bytes(scratch.folder / "keys.json") ==
        bytes(std::filesystem::path(PROJECT_FOLDER) / "configs/scenario.schema.json"));
}

TEST_CASE("The editors' schema knows a key's words, range and need, and no key besides") {
  const Outcome shown = run({"stillground", "new", "--schema", "-"}, "/");
  const auto schema = nlohmann::json::parse(shown.out);
  const auto& bore = schema.at("/properties/bore"_json_pointer);
  CHECK(bore.at("additionalProperties") == false);
  CHECK(bore.at("required") == nlohmann::json({"top", "depth", "diameter", "pipe", "grout"}));
  CHECK(bore.at("/properties/loop/enum"_json_pointer) == nlohmann::json({"single-u", "double-u", "coaxial"}));
  CHECK_THAT(bore.at("/properties/depth/description"_json_pointer).get<std::string>(), Contains("5 m to 1000 m"));
  const auto& rows = schema.at("/properties/field/properties/grid/properties/rows"_json_pointer);
  CHECK((rows.at("type") == "integer" && rows.at("minimum") == 1 && rows.at("maximum") == 1000));
  CHECK(bore.at("/properties/inner_pipe/$ref"_json_pointer) == "#/properties/bore/properties/pipe");
}

TEST_CASE("new never touches a file that is there") {
  const Scratch scratch;
  std::ofstream(scratch.folder / "site.yaml") << "a week of work";
  const Outcome outcome = run({"stillground", "new", "site.yaml"}, scratch.folder);
  CHECK(outcome.status == 2);
  CHECK_THAT(outcome.err, Contains("site.yaml exists already"));
  CHECK(bytes(scratch.folder / "site.yaml") == "a week of work");
}
