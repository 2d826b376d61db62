#include "tools/present/svg.hpp"
#include "tools/present/canvas.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/base/errors.hpp"
#include "tests/catch.hpp"
#include "tools/present/png.hpp"

using namespace stillground::present;

namespace {

const double gap = std::numeric_limits<double>::quiet_NaN();

Figure little_figure() {
  Range range;
  range.add(0);
  range.add(20);
  Panel panel{"Year by year", run_year_axis(4), round_axis("EFT [°C]", range, 4), {}, {}, {}, {}};
  panel.bands.push_back({{1, 2, 3, 4}, {1, 2, gap, 4}, {5, 6, gap, 8}, "#cccccc", 0.5, {"#000000", 1, ""}});
  panel.levels.push_back({15, {"#880000", 2, "4 4"}, "most allowed"});
  panel.levels.push_back({40, {"#880000", 2, "4 4"}, "far off"});
  panel.lines.push_back({{{1, 3}, {2, 4}, {3, gap}, {4, 6}}, {"#004444", 2, "8 5"}, Marker::hollow, "mean"});
  panel.notes.push_back({{4, 6}, "here", "#880000", true, Note::Side::above, true});
  return {"little", "Tom & Jerry's <field>", {"a \"small\" one"}, "Rises & falls", {panel}};
}

std::size_t count(const std::string& text, const std::string& part) {
  std::size_t n = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
  return n;
}

}  // namespace

/// The height at which a word stands on the picture.
double height_of(const std::string& picture, const std::string& word) {
  const std::size_t at = picture.find(">" + word + "<");
  REQUIRE(at != std::string::npos);
  const std::size_t y = picture.rfind(" y=\"", at);
  return std::stod(picture.substr(y + 4));
}

// librsvg parses with libxml2, which refuses what is not well-formed.
TEST_CASE("A picture is well-formed XML that an independent renderer draws", "[svg]") {
  const std::string pixels = png(svg(little_figure()));
  CHECK(pixels.substr(1, 3) == "PNG");
  CHECK(pixels.size() > 5000);
}

TEST_CASE("The renderer refuses broken XML", "[svg]") {
  std::string broken = svg(little_figure());
  broken.erase(broken.find("</title>"), 8);
  CHECK_THROWS_AS(png(broken), stillground::SystemError);
}

TEST_CASE("A picture says in words what it shows", "[svg]") {
  const std::string picture = svg(little_figure());
  CHECK(picture.find("<title id=\"little-title\">Tom &amp; Jerry's &lt;field&gt;</title>") != std::string::npos);
  CHECK(picture.find("<desc id=\"little-description\">Rises &amp; falls</desc>") != std::string::npos);
  CHECK(picture.find("aria-labelledby=\"little-title little-description\"") != std::string::npos);
}

TEST_CASE("A gap parts a line and its band in two", "[svg]") {
  Figure figure = little_figure();
  const std::size_t with_gap = count(svg(figure), "<path");
  figure.panels[0].lines[0].points[2].y = 5;
  figure.panels[0].bands[0].low[2] = 3;
  figure.panels[0].bands[0].high[2] = 7;
  CHECK(with_gap == count(svg(figure), "<path") + 4);  // one more stretch of the line, of the fill and of its two edges
}

TEST_CASE("A limit beyond the axis is named with an arrow and not drawn", "[svg]") {
  const std::string picture = svg(little_figure());
  CHECK(picture.find("far off ↑") != std::string::npos);
  CHECK(count(picture, "stroke-dasharray=\"4 4\"") == 1);
}

TEST_CASE("No text is smaller than a phone can show", "[svg]") {
  const std::string picture = svg(little_figure());
  std::size_t texts = 0;
  const std::string key = "font-size=\"";
  for (std::size_t at = picture.find(key); at != std::string::npos; at = picture.find(key, at + 1)) {
    CHECK(std::stod(picture.substr(at + key.size())) >= 16);
    ++texts;
  }
  CHECK(texts > 10);
}

TEST_CASE("Letters that XML does not allow are replaced", "[svg]") {
  CHECK(xml_text("a\x01"
                 "b\xFF"
                 "c") ==
        "a b\xEF\xBF\xBD"
        "c");
  CHECK(xml_text("5 °C < \"6\" & more") == "5 °C &lt; &quot;6&quot; &amp; more");
}

TEST_CASE("What begins within the series is marked upright and named", "[svg]") {
  Figure figure = little_figure();
  CHECK(count(svg(figure), "stroke-dasharray=\"2 4\"") == 0);
  figure.panels[0].marks = {{2.5, "phase from 2029-01-01", "#004400"}};
  const std::string picture = svg(figure);
  CHECK(count(picture, "stroke-dasharray=\"2 4\"") == 1);
  CHECK(count(picture, ">phase from 2029-01-01<") == 1);
}

TEST_CASE("Names of instants near each other stand in rows of their own", "[svg]") {
  Figure figure = little_figure();
  figure.panels[0].marks = {{1.2, "phase from 2028", "#004400"}, {1.4, "phase from 2029", "#004400"}};
  const std::string picture = svg(figure);
  CHECK(std::abs(height_of(picture, "phase from 2028") - height_of(picture, "phase from 2029")) >= 20);
}

TEST_CASE("Notes at one point do not cover each other", "[svg]") {
  Figure figure = little_figure();
  for (const char* text : {"there", "and there", "there too"}) {
    figure.panels[0].notes.push_back({{4, 6}, text, "#880000", true, Note::Side::above, true});
  }
  const std::string picture = svg(figure);
  std::vector<double> heights;
  for (const char* text : {"here", "there", "and there", "there too"}) heights.push_back(height_of(picture, text));
  std::sort(heights.begin(), heights.end());
  for (std::size_t i = 0; i + 1 < heights.size(); ++i) CHECK(heights[i + 1] - heights[i] >= 20);
}

TEST_CASE("A second line under the ticks takes room of its own", "[svg]") {
  Figure figure = little_figure();
  const double before = height_of(svg(figure), "run-year");
  figure.panels[0].x.ticks[0].below = "2027/28";
  const std::string picture = svg(figure);
  CHECK(height_of(picture, "2027/28") > height_of(picture, "1") + 17);
  CHECK(height_of(picture, "run-year") - before >= 20);
}

TEST_CASE("A key says in words what a stroke is, on as many lines as it needs", "[svg]") {
  Figure figure = little_figure();
  const double before = height_of(svg(figure), "Year by year");
  std::string words = "dense: ";
  for (int i = 0; i < 30; ++i) words += "many words ";
  figure.keys = {{{"#112233", 3, "7 7"}, Marker::hollow, words}};
  const std::string picture = svg(figure);
  CHECK(count(picture, "stroke-dasharray=\"7 7\"") == 1);
  CHECK(picture.find(">dense: many words") != std::string::npos);
  CHECK(height_of(picture, "Year by year") - before >= 100);
}
