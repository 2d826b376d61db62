#include "engine/config/catalogue.hpp"

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <map>

#include "engine/config/usual_range.hpp"
#include "engine/units/quantity.hpp"
#include "tests/catch.hpp"
#include "tests/unit/config/edited.hpp"

using namespace stillground;
using stillground::testing::Contains;

namespace {

const testing::fs::path folder = testing::fs::path(PROJECT_FOLDER) / "configs";

config::Node catalogue(const std::string& name) {
  return config::read_tree(testing::slurp(folder / name), name);
}

/// Reads scenarios with catalogues from another folder while it lives.
struct OtherCatalogues {
  explicit OtherCatalogues(const testing::fs::path& other) { ::setenv("STILLGROUND_CONFIGS", other.c_str(), 1); }
  ~OtherCatalogues() { ::unsetenv("STILLGROUND_CONFIGS"); }
};

}  // namespace

TEST_CASE("Every entry of every catalogue says where its numbers come from", "[config]") {
  for (const auto* name : {"pipes.yaml", "grouts.yaml", "ground.yaml"}) {
    const config::Node all = catalogue(name);
    CHECK(all.entries.size() >= 5);
    for (const config::Entry& entry : all.entries) {
      CAPTURE(name, entry.key);
      REQUIRE(entry.value.find("source"));
      const std::string& source = entry.value.find("source")->value.text;
      const bool marked = source.find("from memory") != source.npos ||
                          source.find("common practice, no source") != source.npos ||
                          source.find("source: ") != source.npos;
      CHECK(marked);
    }
  }
}

TEST_CASE("Every ground and grout says what its kind ranges over, its own value within", "[config]") {
  for (const auto& [name, pattern] : {std::pair{"ground.yaml", "ground.layers[]"}, {"grouts.yaml", "bore.grout"}}) {
    for (const config::Entry& entry : catalogue(name).entries) {
      CAPTURE(name, entry.key);
      std::vector<config::UsualRange> ranges;
      REQUIRE_NOTHROW(ranges = config::usual_ranges(entry.value, pattern, entry.key));
      REQUIRE(ranges.size() == 2);
      CHECK(ranges[0].leaf == "conductivity");
      CHECK(ranges[1].leaf == "heat_capacity");
      for (const auto& range : ranges) CHECK(range.least < range.most);
    }
  }
}

// The sums that the head of grouts.yaml writes out: parts by volume (heat capacity) and the geometric mean (Johansen
// 1975 [from memory]). Water at 10 degC: IAPWS SR6-08, tests/reference/water_properties.csv; minerals from memory.
TEST_CASE("The catalogue's bentonite is the sum of its water and its clay", "[config]") {
  const double clay = 0.2 / 2650, water = 0.8 / 999.7, part = clay / (clay + water);
  const double heat_capacity = (1 - part) * 999.7 * 4195 + part * 2650 * 850;
  const double conductivity = std::pow(0.580, 1 - part) * std::pow(2.0, part);
  const model::Solid solid =
      testing::read_edited({"site {conductivity: 1.6 W/(m K), heat_capacity: 3.0 MJ/(m3 K)} => {use: bentonite}"})
          .bore.grout.solid;
  CHECK(solid.heat_capacity == Approx(heat_capacity).margin(0.05e6));  // rounded to 0.1 MJ/(m3 K)
  CHECK(solid.conductivity == Approx(conductivity).margin(0.005));     // and to 0.01 W/(m K)
}

TEST_CASE("A scenario's own value beside `use` that is unusual for the entry is warned of", "[config]") {
  const auto said = [](const std::string& conductivity) {
    std::string text;
    const auto s =
        testing::read_edited({"site use: sandstone, conductivity: 2.3 W/(m K) => use: sandstone, "
                              "conductivity: " +
                              conductivity});
    for (const Warning& warning : s.warnings) text += warning.line() + "\n";
    return text;
  };
  CHECK_THAT(said("9 W/(m K)"), Contains("site.yaml:6:") &&
                                    Contains("conductivity 9 W/(m K) is unusual for sandstone") &&
                                    Contains("(usual: 1.9 to 4.6 W/(m K))"));
  CHECK_THAT(said("0.9 Btu/(h ft degF)"), Contains("0.9 Btu/(h ft degF) is unusual"));  // 1.56 W/(m K)
  CHECK_THAT(said("4.6 W/(m K)"), !Contains("unusual"));
}

TEST_CASE("Where a catalogue's values are shown, what its kind ranges over stands beside them", "[config]") {
  const auto s = testing::read_edited({"site use: sandstone, conductivity: 2.3 W/(m K) => use: sandstone"});
  CHECK_THAT(s.ground.layers[1].source,
             Contains("VDI 4640") &&
                 Contains("; usual range: conductivity 1.9 to 4.6 W/(m K), heat_capacity 1.8 to 2.6 MJ/(m3 K)"));
}

TEST_CASE("Every pipe, grout and ground of the catalogues can be used", "[config]") {
  for (const config::Entry& entry : catalogue("pipes.yaml").entries) {
    CAPTURE(entry.key);
    CHECK_NOTHROW(testing::read_edited(
        {"site {use: hdpe-dr11-1.25in} => {use: " + entry.key + "}", "site diameter: 150 mm => diameter: 200 mm"}));
  }
  for (const config::Entry& entry : catalogue("grouts.yaml").entries) {
    CAPTURE(entry.key);
    CHECK(testing::read_edited(
              {"site {conductivity: 1.6 W/(m K), heat_capacity: 3.0 MJ/(m3 K)} => {use: " + entry.key + "}"})
              .bore.grout.name == entry.key);
  }
  for (const config::Entry& entry : catalogue("ground.yaml").entries) {
    CAPTURE(entry.key);
    CHECK_NOTHROW(testing::read_edited({"site use: sandstone, conductivity: 2.3 W/(m K) => use: " + entry.key}));
  }
}

// Reference: tests/reference/pipe_dimensions.csv (its head says where each figure comes from). 0.05 mm as the reference
// asks: sizes are nominal and their standards round differently.
TEST_CASE("The catalogue's pipes have the reference's sizes to 0.05 mm", "[config]") {
  const std::map<std::string, std::string> names = {{"3/4 in", "hdpe-dr11-0.75in"},   {"1 in", "hdpe-dr11-1in"},
                                                    {"1-1/4 in", "hdpe-dr11-1.25in"}, {"1-1/2 in", "hdpe-dr11-1.5in"},
                                                    {"2 in", "hdpe-dr11-2in"},        {"25 mm", "pe100-sdr11-25mm"},
                                                    {"32 mm", "pe100-sdr11-32mm"},    {"40 mm", "pe100-sdr11-40mm"},
                                                    {"50 mm", "pe100-sdr11-50mm"},    {"63 mm", "pe100-sdr11-63mm"}};
  std::size_t compared = 0;
  for (const std::string& line :
       testing::parted(testing::slurp(testing::fs::path(REFERENCE_FOLDER) / "pipe_dimensions.csv"), "\n")) {
    if (line.empty() || line[0] == '#' || line.starts_with("nominal")) continue;
    const auto cells = testing::parted(line, ",");
    CAPTURE(cells[0]);
    const model::Pipe pipe = testing::read_edited({"site {use: hdpe-dr11-1.25in} => {use: " + names.at(cells[0]) + "}",
                                                   "site diameter: 150 mm => diameter: 200 mm"})
                                 .bore.pipe;
    CHECK(std::abs(1e3 * pipe.outer_diameter - std::stod(cells[3])) <= 0.05);
    CHECK(std::abs(1e3 * pipe.wall - std::stod(cells[4])) <= 0.05);
    CHECK(std::abs(1e3 * pipe.inner_diameter() - std::stod(cells[5])) <= 0.05);
    ++compared;
  }
  CHECK(compared == names.size());
}

TEST_CASE("A scenario's value goes before the catalogue's", "[config]") {
  const model::Pipe pipe =
      testing::read_edited({"site {use: hdpe-dr11-1.25in} => {use: hdpe-dr11-1.25in, conductivity: 0.45 W/(m K)}"})
          .bore.pipe;
  CHECK(pipe.conductivity == 0.45);
  CHECK(pipe.outer_diameter == Approx(0.04216).epsilon(1e-14));
}

TEST_CASE("Another folder of catalogues may be named, and is judged as strictly", "[config]") {
  const testing::Scratch scratch;
  const OtherCatalogues other(scratch.folder);
  CHECK_THROWS_WITH(testing::read_edited({}),
                    Contains("ground.layers[2].use: cannot read") && Contains("no such file"));
  std::ofstream(scratch.folder / "ground.yaml") << "sandstone: {conductivity: 2 W/(m K), heat_capacity: 2 MJ/(m3 K)}\n";
  CHECK_THROWS_WITH(testing::read_edited({}), Contains("ground.yaml:1:1: ground.sandstone: has no source"));
  std::ofstream(scratch.folder / "ground.yaml") << "sandstone: {conductivty: 2 W/(m K), source: x}\n";
  CHECK_THROWS_WITH(
      testing::read_edited({}),
      Contains("ground.yaml:1:13: ground.sandstone.conductivty: unknown key (did you mean \"conductivity\"?)"));
  std::ofstream(scratch.folder / "ground.yaml") << "sandstone: {heat_capacity: 2 m, source: x}\n";
  CHECK_THROWS_WITH(testing::read_edited({}),
                    Contains("ground.yaml:1:28:") && Contains("\"2 m\" is not a volumetric heat capacity"));
}

TEST_CASE("An installation's catalogues are found from its programs and libraries, wherever it stands", "[config]") {
  const testing::Scratch scratch;
  const testing::fs::path prefix = scratch.folder / "any where";
  const testing::fs::path configs = prefix / "share/stillground/configs";
  CHECK(config::installed_catalogues(prefix / "bin/stillground-check").empty());
  testing::fs::create_directories(configs);
  for (const char* own :
       {"bin/stillground-check", "lib/libstillground.so.0", "lib/x86_64-linux-gnu/libstillground.so"}) {
    CAPTURE(own);
    CHECK(config::installed_catalogues(prefix / own) == configs);
  }
  CHECK(config::installed_catalogues("/stillground").empty());
}

TEST_CASE("The reader may be told another folder of catalogues, but the environment goes first", "[config]") {
  const testing::Scratch scratch;
  CHECK_THROWS_WITH(testing::read_edited({}, scratch.folder),
                    Contains("ground.layers[2].use: cannot read") && Contains("no such file"));
  const OtherCatalogues other(folder);
  CHECK_NOTHROW(testing::read_edited({}, scratch.folder));
}

TEST_CASE("A catalogue's range is judged as strictly", "[config]") {
  const testing::Scratch scratch;
  testing::fs::copy_file(folder / "pipes.yaml", scratch.folder / "pipes.yaml");
  const OtherCatalogues other(scratch.folder);
  const auto sandstone = [&](const std::string& range) {
    std::ofstream(scratch.folder / "ground.yaml")
        << "sandstone: {conductivity: 2 W/(m K), heat_capacity: 2 MJ/(m3 K), range: " << range << ", source: x}\n";
  };
  sandstone("{conductivity: 1 to 3 W/(m K)}");
  CHECK_NOTHROW(testing::read_edited({}));
  sandstone("wide");
  CHECK_THROWS_WITH(testing::read_edited({}), Contains("ground.sandstone.range: a map is expected"));
  sandstone("{conductivty: 1 to 3 W/(m K)}");
  CHECK_THROWS_WITH(testing::read_edited({}), Contains("range.conductivty: is no quantity of this entry"));
  sandstone("{diffusivity: 1 to 3 mm2/s}");  // known, but the entry has none
  CHECK_THROWS_WITH(testing::read_edited({}), Contains("range.diffusivity: is no quantity of this entry"));
  sandstone("{conductivity: 1 - 3 W/(m K)}");
  CHECK_THROWS_WITH(testing::read_edited({}), Contains("\"1 - 3 W/(m K)\" is not a range"));
  sandstone("{conductivity: 1 to 3 m}");
  CHECK_THROWS_WITH(testing::read_edited({}), Contains("\"1 m\" is not a thermal conductivity"));
  sandstone("{conductivity: 3 to 1 W/(m K)}");
  CHECK_THROWS_WITH(testing::read_edited({}), Contains("range.conductivity: ends below its beginning"));
  sandstone("{conductivity: 2.5 to 3 W/(m K)}");
  CHECK_THROWS_WITH(testing::read_edited({}),
                    Contains("ground.sandstone.conductivity: \"2 W/(m K)\" lies outside its own range"));
}
