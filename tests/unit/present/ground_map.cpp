#include "tools/present/ground_map.hpp"

#include <cmath>

#include "tests/catch.hpp"
#include "tools/present/html.hpp"
#include "tools/present/page.hpp"
#include "tools/present/png.hpp"

using namespace stillground;
using namespace stillground::present;
using stillground::testing::Contains;

namespace {

GroundMap made_map(bool upright) {
  GroundMap map;
  map.id = "made";
  map.title = "Made <ground>";
  map.subtitle = {"somewhere"};
  map.description = "nothing";
  map.upright = upright;
  for (int i = 0; i <= 40; ++i) {
    map.x.push_back(i);
    map.y.push_back(upright ? 3.0 * i : i);
  }
  map.quantity = "[°C]";
  map.bores = {{{20, upright ? 2.0 : 20.0}, 100, false}};
  if (!upright) map.outline = {{5, 5}, {35, 5}, {35, 35}};
  map.outline_text = "outline of the plot";
  return map;
}

std::vector<double> cone(const GroundMap& map) {
  std::vector<double> values;
  for (const double y : map.y) {
    for (const double x : map.x) values.push_back(10 - std::hypot(x - 20, y - 20) / 5);
  }
  return values;
}

}  // namespace

TEST_CASE("Levels are round, between the values, and not drawn apart by single ones far off") {
  std::vector<double> values;
  for (int i = 0; i < 1000; ++i) values.push_back(4 + i / 250.0);
  values.push_back(-50);
  const auto levels = round_levels(values);
  CHECK(levels.front() == Approx(4.5));
  CHECK(levels.back() == Approx(7.5));
  CHECK(levels[1] - levels[0] == Approx(0.5));
  CHECK(level_text(levels[0], levels) == "4.5");
}

TEST_CASE("Ground that is alike everywhere is still drawn") {
  GroundMap map = made_map(false);
  const std::vector<double> values(map.x.size() * map.y.size(), 7);
  map.levels = round_levels(values);
  CHECK(map.levels == std::vector<double>{7});
  CHECK_NOTHROW(png(svg(map, map_layer(map, values))));
}

TEST_CASE("A map names its levels on their lines and in its legend, and shows bores, plot and scale") {
  for (const bool upright : {false, true}) {
    GroundMap map = made_map(upright);
    const std::vector<double> values = cone(map);
    map.levels = round_levels(values);
    const std::string layer = map_layer(map, values), picture = svg(map, layer);
    const std::string name = ">" + level_text(map.levels[map.levels.size() / 2], map.levels) + "<";
    CHECK_THAT(layer, Contains(name) && !Contains("nan"));
    CHECK_THAT(picture, Contains("Made &lt;ground&gt;") && Contains(">bore<") && Contains(name));
    if (upright) CHECK_THAT(picture, Contains("depth [m]"));
    if (!upright)
      CHECK_THAT(picture, Contains("outline of the plot") && Contains(" m</text>") && Contains(" ft</text>"));
    CHECK_NOTHROW(png(picture));
  }
}

TEST_CASE("Distances are ticked in feet where people read feet") {
  GroundMap map = made_map(true);
  map.units = UnitSystem::us;
  map.levels = {8};
  CHECK_THAT(svg(map, ""), Contains("depth [ft]") && Contains(">300<"));
}

TEST_CASE("A page's texts cannot become markup") {
  const std::string nasty = "<script>alert('&\"')</script>";
  const Table table{{{"what", "", nasty}, {"eft", "degC", "EFT"}}, {{nasty, 1.234}}};
  for (const std::string& html : {html(table, nasty), html_paragraph(nasty), html_list({nasty}), xml_lines(nasty),
                                  html(std::vector<FactLine>{{nasty, nasty}}), page(nasty, "")}) {
    CHECK_THAT(html, !Contains("<script") && Contains("&lt;script&gt;"));
  }
  CHECK_THAT(html(table, "made"),
             Contains("<th scope=\"col\">EFT<span class=\"unit\">°C</span></th>") && Contains("<td>1.23</td>"));
}

TEST_CASE("A listing keeps its lines") {
  CHECK(xml_lines("a: 1\n  b: <2>\n") == "a: 1\n  b: &lt;2&gt;\n");
}
