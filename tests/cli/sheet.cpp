#include <fstream>
#include <nlohmann/json.hpp>

#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground::testing;

namespace {

Outcome sheet(const PairCase& pair, std::vector<std::string> words) {
  words.insert(words.begin(), {"stillground", "sheet"});
  return run(words, pair.folder);
}

nlohmann::json figures(const PairCase& pair, std::vector<std::string> words) {
  words.emplace_back("--json");
  const Outcome outcome = sheet(pair, words);
  REQUIRE(outcome.status == 0);
  return nlohmann::json::parse(outcome.out);
}

}  // namespace

// Worked out by hand from pair.yaml: two bores of 60 m below 1.5 m, 140 mm wide, with two legs of 40 mm x 3.7 mm.
TEST_CASE("sheet counts metres, pipe, grout and fluid as the scenario has them") {
  const PairCase pair;
  const auto json = figures(pair, {"pair.yaml", "--waste", "25 %", "--bag", "85 L"});
  CHECK(json["length"]["value"] == Approx(123));
  CHECK(json["deepest"]["value"] == Approx(61.5));
  CHECK(json["pipes"][0]["length"]["value"] == Approx(240));
  CHECK(json["pipes"][0]["length_to_surface"]["value"] == Approx(246));
  const double pi = 3.14159265358979, grout = 120 * pi / 4 * (0.14 * 0.14 - 2 * 0.04 * 0.04);
  CHECK(json["grout"]["net"]["value"] == Approx(grout).epsilon(1e-6));
  CHECK(json["grout"]["order"]["value"] == Approx(1.25 * grout).epsilon(1e-6));
  CHECK(json["grout"]["bags"] == static_cast<long>(1.25 * grout / 0.085) + 1);
  CHECK(json["volume"]["value"] == Approx(240e3 * pi / 4 * 0.0326 * 0.0326).epsilon(1e-6));
  const double glycol = json["antifreeze"]["mass"]["value"], water = json["water"]["mass"]["value"];
  CHECK(glycol / (glycol + water) == Approx(0.25));
}

// Worked out from the strengths of the Plastics Pipe Institute's comparison of 2015: 1,000 psi and ratio 11 make
// 13.79 bar, of which one and a half times, less water of 999.7 kg/m3 over 61.5 m, is left at the surface.
TEST_CASE("sheet says between which pressures the loops are tested") {
  const PairCase pair;
  const auto json = figures(pair, {"pair.yaml", "--fill", "3 bar"});
  CHECK(json["test_pressure_least"]["value"] == Approx(4.5));
  CHECK(json["pipe_materials"][0]["material"] == "PE4710");
  CHECK(json["pipe_materials"][0]["pressure_rating"]["value"] == Approx(13.79).margin(0.005));
  CHECK(json["pipe_materials"][0]["test_pressure_most"]["value"] == Approx(1.5 * 13.7895 - 6.0292).margin(0.005));
  CHECK(json["flushing_flow"]["value"] == Approx(0.509).margin(0.0005));  // 40 mm SDR 11 at 0.61 m/s
}

TEST_CASE("sheet warns of a pipe that stands above its rating at the toe, and of a usual test that oversteps") {
  const PairCase pair;
  pair.write_variant("deep.yaml", "  depth: 60 m", "  depth: 160 m");
  const Outcome deep = sheet(pair, {"deep.yaml"});
  REQUIRE(deep.status == 0);
  CHECK_THAT(deep.out, Contains("above its rating at the toe") && Contains("overstep at least one line"));
  CHECK_THAT(sheet(pair, {"pair.yaml", "--fill", "1 bar"}).out, !Contains("above its rating at the toe"));
}

TEST_CASE("sheet puts the cautions first and marks where each rule comes from") {
  const PairCase pair;
  const std::string text = sheet(pair, {"pair.yaml"}).out;
  const auto cautions = text.find("\nCautions\n"), drill = text.find("\nDrill\n");
  REQUIRE(cautions != std::string::npos);
  REQUIRE(drill != std::string::npos);
  CHECK(cautions < drill);
  CHECK_THAT(text, Contains("[common practice, no source]") && Contains("[published: Unified Facilities Guide") &&
                       Contains("No warnings from the model.") && Contains("____"));
}

TEST_CASE("sheet speaks the units that are asked for, and keeps SI for machines") {
  const PairCase pair;
  CHECK_THAT(sheet(pair, {"pair.yaml", "--units", "us"}).out,
             Contains("drill to [ft]") && Contains(" gpm") && Contains(" lb") && !Contains(" kg"));
  CHECK(figures(pair, {"pair.yaml"})["length"]["units"] == "m");
  CHECK(figures(pair, {"pair.yaml", "--units", "us"})["length"]["units"] == "ft");
}

TEST_CASE("sheet writes one page, and what the scenario brings does not become markup") {
  const PairCase pair;
  pair.write_variant("wicked.yaml", "title: Two bores for the tests",
                     "title: \"<script>alert(1)</script> & \\\"Co\\\"\"");
  std::ofstream(pair.folder / "bores.csv") << "name,x [m],y [m]\n<img src=x>,0,0\nB,6,0\n";
  pair.write_variant("named.yaml", "grid: {rows: 1, columns: 2, spacing: 6 m}", "positions: bores.csv");
  REQUIRE(sheet(pair, {"wicked.yaml", "-o", "sheet.html"}).status == 0);
  const std::string page = bytes(pair.folder / "sheet.html");
  CHECK_THAT(page, StartsWith("<!DOCTYPE html>") && EndsWith("</html>\n") && Contains("&lt;script&gt;") &&
                       Contains("Content-Security-Policy"));
  CHECK_THAT(page, !Contains("<script") && !Contains("http://www.w3.org/1999") && !Contains("src="));
  REQUIRE(sheet(pair, {"named.yaml", "-o", "named.html"}).status == 0);
  CHECK_THAT(bytes(pair.folder / "named.html"), Contains("&lt;img src=x&gt;") && !Contains("<img"));
}

TEST_CASE("sheet refuses what it cannot write, and figures that cannot be") {
  const PairCase pair;
  const auto refused = [&](const std::vector<std::string>& words, const std::string& said) {
    const Outcome outcome = sheet(pair, words);
    CAPTURE(words.back());
    CHECK(outcome.status == 2);
    CHECK_THAT(outcome.err, Contains(said));
  };
  refused({"pair.yaml", "-o", "sheet.pdf"}, "neither in .html nor in .txt");
  refused({"pair.yaml", "-o", "nowhere/sheet.html"}, "there is no folder nowhere");
  refused({"pair.yaml", "-o", "-", "--json"}, "standard output");
  refused({"pair.yaml", "--waste", "300 %"}, "--waste");
  refused({"pair.yaml", "--bag", "85"}, "--bag: ");
  refused({"pair.yaml", "--fill", "3 m"}, "--fill: ");
  refused({"missing.yaml"}, "no such file");
}
