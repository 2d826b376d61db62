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

TEST_CASE("Every kind of starting scenario is one that check accepts as it stands") {
  const Scratch scratch;
  const std::string kind = GENERATE("grid", "plot", "coaxial", "us");
  CAPTURE(kind);
  REQUIRE(run({"stillground", "new", "site.yaml", "--like", kind}, scratch.folder).status == 0);
  const Outcome checked = run({"stillground", "check", "site.yaml"}, scratch.folder);
  INFO(checked.err);
  CHECK(checked.status == 0);
  CHECK_THAT(checked.out, Contains("the title that `stillground new` writes") &&
                              Contains("is the load of the scenario that `stillground new` writes"));
  CHECK((checked.out.find("degF") != std::string::npos) == (kind == "us"));
  const std::string text = bytes(scratch.folder / "site.yaml");
  CHECK((text.find("\n  plot:") != std::string::npos) == (kind == "plot"));
  CHECK((text.find("\n  loop: coaxial") != std::string::npos) == (kind == "coaxial"));
}

TEST_CASE("What leaves the house refuses the placeholders of new by name, until they are replaced") {
  const Scratch scratch;
  REQUIRE(run({"stillground", "new", "site.yaml"}, scratch.folder).status == 0);
  std::string text = bytes(scratch.folder / "site.yaml");
  const auto replace = [&](const std::string& from, const std::string& to) {
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    std::ofstream(scratch.folder / "site.yaml") << text.replace(at, from.size(), to);
  };
  for (const std::vector<std::string>& verb :
       {std::vector<std::string>{"sheet", "site.yaml"}, {"size", "site.yaml", "--vary", "depth"}}) {
    std::vector<std::string> words = {"stillground"};
    words.insert(words.end(), verb.begin(), verb.end());
    const Outcome refused = run(words, scratch.folder);
    CHECK(refused.status == 2);
    CHECK_THAT(refused.err, StartsWith("site.yaml:") && Contains("title: \"A site to be named\""));
  }
  replace("A site to be named", "Alder Lane school");
  const Outcome load = run({"stillground", "sheet", "site.yaml"}, scratch.folder);
  CHECK(load.status == 2);
  CHECK_THAT(load.err, Contains("loads.to_ground: 13.5 kW"));
  replace("to_ground: 13.5 kW", "to_ground: 9 kW");
  CHECK(run({"stillground", "sheet", "site.yaml"}, scratch.folder).status == 0);
}

TEST_CASE("new refuses a kind that it does not know, and writes neither file of a plot over one that is there") {
  const Scratch scratch;
  const Outcome unknown = run({"stillground", "new", "site.yaml", "--like", "spiral"}, scratch.folder);
  CHECK(unknown.status == 2);
  CHECK_THAT(unknown.err, Contains("none of grid, plot, coaxial, us"));
  std::ofstream(scratch.folder / "site_plot.csv") << "surveyed";
  const Outcome outcome = run({"stillground", "new", "site.yaml", "--like", "plot"}, scratch.folder);
  CHECK(outcome.status == 2);
  CHECK_THAT(outcome.err, Contains("site_plot.csv exists already"));
  CHECK(bytes(scratch.folder / "site_plot.csv") == "surveyed");
  CHECK(!std::filesystem::exists(scratch.folder / "site.yaml"));
}

TEST_CASE("Every verb tells its options to who completes them in a shell") {
  for (const auto& verb : built_verbs()) {
    CAPTURE(verb);
    const Outcome told = run({"stillground", verb, "--options"}, "/");
    CHECK(told.status == 0);
    CHECK_THAT(told.out, Contains("-h --help\t\t"));
  }
  CHECK_THAT(run({"stillground", "eft", "--options"}, "/").out,
             Contains("\n--units\tsi|us\t") && Contains("--json\t\t"));
}
