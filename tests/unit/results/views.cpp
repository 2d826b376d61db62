
#include "engine/base/errors.hpp"
#include "tests/catch.hpp"
#include "tests/unit/results/made_hours.hpp"
#include "tests/unit/results/made_result.hpp"
#include "tools/outputs/outputs.hpp"
#include "tools/present/csv.hpp"
#include "tools/present/png.hpp"
#include "tools/present/svg.hpp"
#include "tools/results/compare_view.hpp"
#include "tools/results/drift_view.hpp"

using namespace stillground;
using namespace stillground::results;
using stillground::testing::Contains;
using stillground::testing::made_hours;
using stillground::testing::made_result;

namespace {

const std::vector<record::LimitRow> limits = {{"eft_max", "eft", false, "hour", 273.15 + 11}};

record::Header header_of(int years) {
  record::Header header;
  header.title = "made";
  header.start = {2027, 7, 1};
  header.years = years;
  header.limits = limits;
  return header;
}

/// 10 degC in the first run-year, one more in each after it.
FluidSummary warming(int years) {
  return summarise(header_of(years), made_hours(static_cast<std::size_t>(8760 * years),
                                                [](std::size_t h) { return 10.0 + static_cast<double>(h / 8760); }));
}

Source source(int years) {
  return {"made.h5", "made", {2027, 7, 1}, years, "march"};
}

Layout made_layout(const stillground::testing::MadeResult& made, const std::string& name) {
  Layout layout = layout_of(made_result(made));
  layout.name = name;
  return layout;
}

}  // namespace

TEST_CASE("The fluid's table names the first, fifth and last run-year and the first crossing") {
  const std::string text = eft_text(source(6), warming(6));
  CHECK_THAT(text, Contains("\n       1  2027-07-01  10.00  10.00  10.00       8760\n"));
  CHECK_THAT(text, Contains("\n       5  2031-07-01  14.00  14.00  14.00       8760\n"));
  CHECK_THAT(text, Contains("\n       6  2032-07-01  15.00  15.00  15.00       8760\n"));
  CHECK_THAT(text, Contains("2029-07-01 00:00-01:00         3") && Contains("35040  h"));
}

TEST_CASE("A run of one year is shown once") {
  const std::string text = eft_text(source(1), warming(1));
  CHECK_THAT(text, !Contains("2028-07-01") && Contains("\nJul      10.00") && Contains("kept"));
  CHECK(eft_figure(source(1), warming(1)).panels.size() == 1);
}

TEST_CASE("Without limits the table says so") {
  FluidSummary summary = warming(1);
  summary.limits.clear();
  CHECK_THAT(eft_text(source(1), summary), Contains("sets no limits"));
}

TEST_CASE("Months, years and the duration curve are tables of their own") {
  const FluidSummary summary = warming(2);
  CHECK(month_table(summary).rows.size() == 24);
  CHECK(year_table(summary).rows.size() == 2);
  CHECK(duration_table(summary).rows.size() == 101);
  CHECK_THAT(
      present::csv(month_table(summary), {}),
      Contains("run_year,month,hours_with_flow [h],eft_min [degC],eft_mean [degC],eft_max [degC],lft_min [degC]") &&
          Contains("\n2,2029-06,720,11,11,11,13,13,13,12,12,12,0,0\n"));
  CHECK_THAT(present::csv(year_table(summary), {}),
             Contains(",beyond_eft_max [h],from_ground [MWh],into_ground [MWh]\n1,2027-07-01,8760,10,"));
}

TEST_CASE("The fluid's JSON carries units beside every number") {
  const present::Json object = eft_json(source(3), warming(3));
  CHECK(object["yearly"]["eft_mean"] == present::Json({{"units", "degC"}, {"values", {10.0, 11.0, 12.0}}}));
  CHECK(object["limits"][0]["first_beyond"]["date"] == "2029-07-01 01:00");
  CHECK(object["limits"][0]["first_beyond"]["time"]["units"] == "hours since 2027-07-01 00:00:00");
  CHECK(object["limits"][0]["first_year_beyond"] == 3);
  CHECK(object["limits"][0]["kept"] == false);
}

TEST_CASE("A run without any flow still has tables and a picture") {
  auto hours = made_hours(8760, [](std::size_t) { return 5.0; });
  for (auto& hour : hours) hour.flow = 0;
  const FluidSummary summary = summarise(header_of(1), hours);
  CHECK_THAT(eft_text(source(1), summary), Contains("not judged"));
  CHECK_THAT(present::svg(eft_figure(source(1), summary)), Contains("no hour had flow"));
  CHECK_NOTHROW(present::png(present::svg(eft_figure(source(1), summary))));
}

TEST_CASE("Layouts stand side by side, and one without ground temperatures still stands") {
  const auto rise = [](double t) { return 0.1 * t; };
  const std::vector<Layout> layouts = {made_layout({2, "monthly", rise, 1, limits}, "dense"),
                                       made_layout({1, "none", rise, 1, {}}, "wide")};
  const std::string text = compare_text(layouts);
  CHECK_THAT(text, Contains("                  dense      wide\n") &&
                       Contains("\nto drill                   m                            204       204\n"));
  CHECK_THAT(text, Contains("wide: no ground temperatures recorded"));
  CHECK_THAT(text, Contains("2028-07-01 00:00-01:00  no limit"));
  const present::Json object = compare_json(layouts);
  CHECK(object["layouts"][0]["drift"]["value"].get<double>() == Approx(2).epsilon(1e-5));
  CHECK(object["layouts"][0]["first_year_beyond"]["value"] == 2);
  CHECK(object["layouts"][1]["drift"]["value"].is_null());
  CHECK(object["layouts"][1]["spacing"] == present::Json({{"value", 6.0}, {"units", "m"}}));
  CHECK_NOTHROW(present::png(present::svg(compare_figure(layouts))));
}

TEST_CASE("Layouts are told apart by depth, margin and hours beyond, shares in percent") {
  stillground::testing::MadeResult made{2, "monthly", [](double t) { return 0.1 * t; }, 0.2, limits};
  const std::vector<Layout> layouts = {made_layout(made, "dense")};
  const std::string text = compare_text(layouts);
  CHECK_THAT(text, Contains("\nbore depth                 m                          100.0\n") &&
                       Contains("\nmargin to nearest limit    K                          -1.00\n") &&
                       Contains("\nhours beyond a limit       h                           8760\n") &&
                       Contains("\nground block on the plan   m2 ") && Contains("\nof its final change        %  "));
  const present::Json object = compare_json(layouts)["layouts"][0];
  CHECK(object["depth_min"] == present::Json({{"value", 100.0}, {"units", "m"}}));
  CHECK(object["depth_max"] == object["depth_min"]);
  CHECK(object["margin"]["value"].get<double>() == Approx(-1));
  CHECK(object["margin"]["units"] == "K");
  CHECK(object["hours_beyond"] == present::Json({{"value", 8760}, {"units", "h"}}));
  CHECK(object["share_reached"]["units"] == "1");
  CHECK(object["share_reached"]["value"].get<double>() < 1);
  CHECK(object.contains("land_area"));
  CHECK_THAT(present::csv(compare_table(layouts), {}),
             Contains("layout,file,title,") && Contains("depth_min [m],depth_max [m]"));
}

TEST_CASE("A layout of mixed depths shows from where to where they reach") {
  std::vector<Layout> layouts = {made_layout({1, "none", [](double) { return 0.0; }, 0, {}}, "mixed")};
  layouts[0].least_depth = 90;
  CHECK_THAT(compare_text(layouts), Contains("90.0 to 100.0\n"));
  CHECK_THAT(compare_text(layouts), !Contains("months beyond a limit"));
}

TEST_CASE("Files are named by what tells them apart") {
  CHECK(short_names({"a/five.h5", "b/seven.h5"}) == std::vector<std::string>{"five", "seven"});
  CHECK(short_names({"a/run.h5", "b/run.h5", "c.h5"}) == std::vector<std::string>{"a/run", "b/run", "c"});
  CHECK(short_names({"a/run.h5", "a/run.h5"}) == std::vector<std::string>{"a/run (1)", "a/run (2)"});
}

TEST_CASE("The drift's picture tells its verdict to those who cannot see it") {
  YearlyGround yearly{{0.5, 0.9, 1.2}, {0.6, 1.0, 1.3}, {285.15, 285.15, 285.15}, 3, 3.2};
  const present::Figure figure = drift_figure(source(3), assess(yearly));
  CHECK(figure.description == verdict(assess(yearly)));
  CHECK_NOTHROW(present::png(present::svg(figure)));
}

TEST_CASE("Only one thing can go to standard output") {
  CHECK_NOTHROW(outputs::check_outputs({"-", "plot.svg", false}));
  CHECK_THROWS_AS(outputs::check_outputs({"-", "-", false}), InputError);
  CHECK_THROWS_AS(outputs::check_outputs({"", "-", true}), InputError);
}
