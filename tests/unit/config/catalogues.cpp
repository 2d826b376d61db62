#include "engine/config/catalogue.hpp"

#include <catch2/catch.hpp>
#include <cstdlib>
#include <fstream>
#include <map>

#include "tests/unit/config/edited.hpp"

using namespace stillground;
using Catch::Matchers::Contains;

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
