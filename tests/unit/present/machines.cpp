#include <limits>

#include "tests/catch.hpp"
#include "tools/present/csv.hpp"
#include "tools/present/json.hpp"

using namespace stillground::present;

namespace {

const double not_a_number = std::numeric_limits<double>::quiet_NaN();

Table little_table() {
  return {{{"run_year", ""}, {"month", ""}, {"eft_min", "degC", "least", 1}},
          {{1L, std::string("2027-07"), 3.25}, {2L, std::string("2028-07"), not_a_number}}};
}

}  // namespace

TEST_CASE("CSV names each column with its unit and leaves unknown cells empty") {
  CHECK(csv(little_table(), {"Juniper Row"}) ==
        "# Juniper Row\n"
        "run_year,month,eft_min [degC]\n"
        "1,2027-07,3.25\n"
        "2,2028-07,\n");
}

TEST_CASE("CSV quotes commas, quotes and line ends as RFC 4180 asks") {
  const Table table{{{"title", ""}}, {{std::string("6 x 5, \"dense\"\nfield")}}};
  CHECK(csv(table, {}) == "title\n\"6 x 5, \"\"dense\"\"\nfield\"\n");
}

TEST_CASE("A comment of several lines cannot become a row of data") {
  CHECK(csv({{{"a", ""}}, {}}, {"first\nsecond"}) == "# first second\na\n");
}

TEST_CASE("CSV holds ten digits, so that the way from kelvin to degC leaves no noise") {
  CHECK(csv({{{"t", "degC"}}, {{284.95 - 273.15}}}, {}) == "t [degC]\n11.8\n");
}

TEST_CASE("JSON puts units beside numbers, none beside text, and null where nothing is known") {
  const Json object = columns(little_table());
  CHECK(object["run_year"] == Json({{"units", "1"}, {"values", {1, 2}}}));
  CHECK(object["month"] == Json({{"values", {"2027-07", "2028-07"}}}));
  CHECK(object["eft_min"]["units"] == "degC");
  CHECK(object["eft_min"]["values"][0] == 3.25);
  CHECK(object["eft_min"]["values"][1].is_null());
}

TEST_CASE("A single JSON quantity carries its unit; text stands alone") {
  CHECK(quantity(284.95 - 273.15, "degC").dump() == R"({"value":11.8,"units":"degC"})");
  CHECK(single(Cell(3L), "").dump() == R"({"value":3,"units":"1"})");
  CHECK(single(Cell(std::string("kept")), "") == "kept");
  CHECK(single(Cell(), "m")["value"].is_null());
}

TEST_CASE("JSON with broken letters is still JSON") {
  CHECK(Json::parse(dump({{"title", "caf\xE9"}}))["title"] == "caf\xEF\xBF\xBD");
}
