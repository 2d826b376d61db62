
#include "tests/catch.hpp"
#include "tests/unit/results/made_hours.hpp"
#include "tools/present/png.hpp"
#include "tools/present/svg.hpp"
#include "tools/results/compare_view.hpp"
#include "tools/results/drift_view.hpp"
#include "tools/results/phases.hpp"
#include "tools/results/temperature_scale.hpp"

using namespace stillground;
using namespace stillground::results;
using stillground::testing::Contains;
using stillground::testing::made_hours;

namespace {

const Date july{2027, 7, 1};
const outputs::Drawing us{UnitSystem::us, {}};

record::LimitRow limit(const std::string& quantity, bool is_least, double celsius, const std::string& over = "hour") {
  return {quantity + (is_least ? "_min" : "_max"), quantity, is_least, over, 273.15 + celsius};
}

/// EFT 10 degC in the first run-year, one more in each after it; LFT 2 K above.
FluidSummary warming(int years, const std::vector<record::LimitRow>& limits) {
  record::Header header;
  header.start = july;
  header.years = years;
  header.limits = limits;
  return summarise(header, made_hours(static_cast<std::size_t>(8760 * years),
                                      [](std::size_t h) { return 10.0 + static_cast<double>(h / 8760); }));
}

Source source(int years) {
  return {"made.h5", "made", july, years, "march"};
}

Drift cooling() {
  return assess({{-0.5, -0.9, -1.2}, {-0.6, -1.0, -1.3}, {285.15, 285.15, 285.15}, -3, -3.2});
}

Layout layout(const std::string& name, const std::vector<record::LimitRow>& limits, const std::string& method) {
  const FluidSummary fluid = warming(3, limits);
  Layout one;
  one.name = name;
  one.title = "The title of " + name;
  one.method = method;
  one.years = 3;
  one.start = july;
  one.bores = 4;
  one.least_depth = 90;
  one.most_depth = 120;
  one.drill_length = 428;
  one.fluid = fluid.years;
  one.limits = fluid.limits;
  return one;
}

const present::Line* line_named(const present::Panel& panel, const std::string& label) {
  for (const present::Line& line : panel.lines) {
    if (line.label == label) return &line;
  }
  return nullptr;
}

}  // namespace

TEST_CASE("The fluid's picture is on the scale that was asked for") {
  const FluidSummary summary = warming(3, {limit("eft", false, 11)});
  const present::Figure figure = eft_figure(source(3), summary, us);
  for (const present::Panel& panel : figure.panels) CHECK(panel.y.label == "EFT [°F]");
  CHECK(figure.panels[1].lines[0].points[0].y == Approx(50));
  CHECK(figure.panels[1].levels[0].y == Approx(51.8));
  CHECK(figure.panels[1].levels[0].label == "most allowed\n51.8 °F");
  CHECK_THAT(figure.description, Contains("°F") && !Contains("°C"));
  CHECK(eft_figure(source(3), summary).panels[1].y.label == "EFT [°C]");
}

TEST_CASE("The drift's picture is on the scale that was asked for") {
  const present::Figure figure = drift_figure(source(3), cooling(), us);
  const present::Panel& panel = figure.panels[0];
  CHECK_THAT(panel.y.label, Contains("[°F]"));
  CHECK(panel.levels[0].label == "undisturbed\n53.6 °F");
  CHECK(panel.lines.back().points[0].y == Approx(53.6 - 0.9));
  CHECK(panel.notes[0].text == "trend -6.30 °F per decade");
  CHECK_THAT(figure.description, Contains("°F") && !Contains("degF") && !Contains(" K"));
}

TEST_CASE("The trend's bar has the block's slope on either scale") {
  for (const UnitSystem system : {UnitSystem::si, UnitSystem::us}) {
    const present::Panel panel = drift_figure(source(3), cooling(), {system, {}}).panels[0];
    const std::vector<present::Point>& bar = panel.lines.front().points;
    CHECK((bar[1].y - bar[0].y) / (bar[1].x - bar[0].x) == Approx(system == UnitSystem::us ? -0.63 : -0.35));
  }
}

TEST_CASE("The layouts' picture is on the scale that was asked for") {
  const present::Figure figure = compare_figure({layout("one", {limit("eft", false, 15)}, "march")}, us);
  CHECK(figure.panels[0].y.label == "EFT [°F]");
  CHECK(figure.panels[0].lines[0].points[2].y == Approx(53.6));
  CHECK_THAT(figure.keys[0].text, Contains("295 ft to 394 ft") && Contains("5.40 °F to spare"));
}

TEST_CASE("Every limit that was set is drawn in a panel of what it judges") {
  const auto summary =
      warming(3, {limit("eft", true, 8), limit("lft", false, 20), limit("mean_fluid", true, 9, "month")});
  const present::Figure figure = eft_figure(source(3), summary);
  REQUIRE(figure.panels.size() == 4);  // months, and the run-years of each quantity
  CHECK(figure.panels[1].y.label == "EFT [°C]");
  CHECK(figure.panels[2].y.label == "LFT [°C]");
  CHECK(figure.panels[3].y.label == "mean fluid temperature [°C]");
  CHECK(figure.panels[2].levels[0].label == "most allowed\n20 °C");
  CHECK(figure.panels[2].lines[0].points[1].y == Approx(13));
  CHECK(figure.panels[3].levels[0].label == "least allowed,\nmonth: 9 °C");
  for (std::size_t p = 1; p < 4; ++p) CHECK(figure.panels[p].levels.size() == 1);
}

TEST_CASE("What only months are judged by is a line of its own") {
  record::Header header;
  header.start = july;
  header.years = 2;
  header.limits = {limit("eft", true, 3, "month")};
  const auto hours =
      made_hours(2 * 8760, [](std::size_t h) { return h % 24 == 0 ? 0.0 : 5.0 - static_cast<double>(h / 8760); });
  const present::Panel panel = eft_figure(source(2), summarise(header, hours)).panels[1];
  const present::Line* judged = line_named(panel, "least month");
  REQUIRE(judged != nullptr);
  CHECK(judged->points[0].y == Approx(5 * 23 / 24.0));
  CHECK(judged->points[1].y == Approx(4 * 23 / 24.0));
  CHECK(line_named(panel, "least hour")->points[0].y == Approx(0).margin(1e-9));
}

TEST_CASE("The picture says when the limit that was left first was left, whatever it is on") {
  const auto summary = warming(4, {limit("eft", false, 11.5), limit("lft", false, 12.5)});
  const present::Figure figure = eft_figure(source(4), summary);
  const std::string said = "First beyond a limit on 2028-07-01, in run-year 2: the greatest LFT allowed is 12.5 °C.";
  CHECK(std::count(figure.subtitle.begin(), figure.subtitle.end(), said) == 1);
  REQUIRE(figure.panels[2].notes.size() == 1);
  CHECK(figure.panels[2].notes[0].text == "first beyond 2028-07-01");
  CHECK(figure.panels[2].notes[0].at.y == Approx(13));
  CHECK(figure.panels[1].notes[0].text == "first beyond 2029-07-01");
}

TEST_CASE("Limits that are kept, and none at all, are said to be so") {
  const auto says = [](const FluidSummary& summary, const std::string& what) {
    const auto subtitle = eft_figure(source(2), summary).subtitle;
    return std::count(subtitle.begin(), subtitle.end(), what) == 1;
  };
  CHECK(says(warming(2, {limit("eft", false, 30)}), "All limits are kept."));
  CHECK(says(warming(2, {}), "The scenario sets no limits."));
}

TEST_CASE("A month is left in a month, not on a day") {
  const auto summary = warming(2, {limit("mean_fluid", false, 11.5, "month")});
  const auto subtitle = eft_figure(source(2), summary).subtitle;
  CHECK_THAT(subtitle[2], Contains("limit in 2028-07, in run-year 2: the greatest monthly mean of the mean fluid"));
}

TEST_CASE("A run of one year shows in its months where a limit was left, with the calendar below") {
  record::Header header;
  header.start = july;
  header.years = 1;
  header.limits = {limit("lft", true, 4)};
  const auto hours = made_hours(8760, [](std::size_t h) { return h / 24 == 190 ? 1.0 : 5.0; });  // in January
  const present::Figure figure = eft_figure(source(1), summarise(header, hours));
  REQUIRE(figure.panels.size() == 2);
  const present::Panel& panel = figure.panels[1];
  CHECK(panel.y.label == "LFT [°C]");
  REQUIRE(panel.notes.size() == 1);
  CHECK(panel.notes[0].at.x == 6.5);
  CHECK(panel.notes[0].at.y == Approx(3));
  CHECK(panel.notes[0].text == "first beyond 2028-01-07");
  CHECK(panel.x.ticks[0].below == "2027");
  CHECK(panel.x.ticks[6].below == "2028");
  CHECK(panel.x.ticks[7].below.empty());
}

TEST_CASE("Run-years stand over their calendar years in every picture") {
  const auto axis_of = [](const present::Figure& figure) { return figure.panels.back().x.ticks.back().below; };
  CHECK(axis_of(eft_figure(source(3), warming(3, {}))) == "2029/30");
  CHECK(axis_of(drift_figure(source(3), cooling())) == "2029/30");
  CHECK(axis_of(compare_figure({layout("one", {}, "march")})) == "2029/30");
  Layout later = layout("later", {}, "march");
  later.start = {2030, 1, 1};
  CHECK(axis_of(compare_figure({layout("one", {}, "march"), later})).empty());  // no calendar holds for both
}

TEST_CASE("Later phases are marked on the day on which they begin") {
  std::vector<record::BoreRow> bores(4);
  bores[2].start = bores[3].start = 62 * seconds_per_day;  // July and August
  bores[1].start = (365 + 92) * seconds_per_day;
  Source site = source(3);
  site.phases = later_starts(bores);
  REQUIRE(site.phases.size() == 2);
  const present::Figure figure = eft_figure(site, warming(3, {}));
  REQUIRE(figure.panels[0].marks.size() == 1);  // the second year's months are not drawn
  CHECK(figure.panels[0].marks[0].x == Approx(2));
  REQUIRE(figure.panels[1].marks.size() == 2);
  CHECK(figure.panels[1].marks[0].label == "phase from 2027-09-01");
  CHECK(figure.panels[1].marks[0].x == Approx(0.5 + 62 / 365.0));
  CHECK(figure.panels[1].marks[1].label == "phase from 2028-10-01");
  CHECK(drift_figure(site, cooling()).panels[0].marks.size() == 2);
  CHECK(phase_marks({4 * seconds_per_year}, july, 3).empty());
}

TEST_CASE("A phase that not all layouts have is marked with their names") {
  std::vector<Layout> layouts = {layout("one", {}, "march"), layout("two", {}, "march")};
  layouts[1].phases = {seconds_per_year};
  CHECK(compare_figure(layouts).panels[0].marks.at(0).label == "two: phase from 2028-07-01");
  layouts[0].phases = layouts[1].phases;
  const auto marks = compare_figure(layouts).panels[0].marks;
  REQUIRE(marks.size() == 1);
  CHECK(marks[0].label == "phase from 2028-07-01");
}

TEST_CASE("Layouts are shown by the titles of their scenarios, with what they take and how they do") {
  const std::vector<Layout> layouts = {layout("one", {limit("lft", false, 12.5), limit("eft", true, 9)}, "march"),
                                       layout("two", {limit("eft", false, 15)}, "screening"),
                                       layout("three", {}, "march")};
  const present::Figure figure = compare_figure(layouts);
  REQUIRE(figure.keys.size() == 3);
  CHECK_THAT(figure.keys[0].text,
             Contains("one: The title of one. 4 bores of 90 m to 120 m, 428 m to drill; first beyond lft_max "
                      "on 2028-07-01, by up to 1.50 K."));
  CHECK_THAT(figure.keys[1].text, Contains("all limits kept, 3.00 K to spare. A screening estimate, not a march"));
  CHECK_THAT(figure.keys[2].text, Contains("no limits set."));
  CHECK(figure.panels[0].lines[1].label == "two\nscreening");
  CHECK(figure.panels[0].lines[0].label == "one");
  for (std::size_t i = 0; i < 3; ++i) CHECK(figure.keys[i].stroke.dash == figure.panels[0].lines[i].stroke.dash);
  CHECK_NOTHROW(present::png(present::svg(figure)));
}

TEST_CASE("A limit that not all layouts have is drawn with the names of those that do") {
  const Layout one = layout("one", {limit("eft", false, 13), limit("lft", false, 20)}, "march");
  const Layout two = layout("two", {limit("eft", false, 13), limit("eft", true, 9, "month")}, "march");
  const auto labels = [](const std::vector<Layout>& layouts) {
    std::vector<std::string> words;
    for (const present::Panel& panel : compare_figure(layouts).panels) {
      for (const present::Level& level : panel.levels) words.push_back(level.label);
    }
    return words;
  };
  CHECK(labels({one, two}) == std::vector<std::string>{"most allowed\n13 °C"});
  CHECK(labels({one, layout("three", {}, "march"), two}) == std::vector<std::string>{"most allowed\n13 °C\none\ntwo"});
}

TEST_CASE("The mid-points have one name") {
  CHECK(line_named(drift_figure(source(3), cooling()).panels[0], "mid-points\nbetween bores") != nullptr);
}

TEST_CASE("Degrees get their sign, other words keep their letters") {
  CHECK(with_degree_signs("by 1.2 degF, not degC; in degrees and to some degree") ==
        "by 1.2 °F, not °C; in degrees and to some degree");
  CHECK(TemperatureScale{}.plain(273.15 - 1e-9) == "0 °C");
  CHECK(TemperatureScale{UnitSystem::us}.difference(-0.5, 2, true) == "-0.90 °F");
  CHECK(TemperatureScale{}.difference(0.5, 2, true) == "+0.50 K");
}
