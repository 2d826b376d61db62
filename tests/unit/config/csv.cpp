#include "engine/config/csv.hpp"

#include <fstream>

#include "engine/base/digest.hpp"
#include "tests/catch.hpp"
#include "tests/unit/base/scratch.hpp"

using namespace stillground;
using config::Csv;
using stillground::testing::Contains;
using stillground::testing::EndsWith;

namespace {

Csv csv_of(const std::string& text) {
  const testing::Scratch scratch;
  std::ofstream(scratch.folder / "t.csv", std::ios::binary) << text;
  return config::read_csv(scratch.folder / "t.csv", {{"site.yaml", 3, 5}, "loads.file"});
}

}  // namespace

TEST_CASE("A column is named without its unit", "[config]") {
  const Csv csv = csv_of("a [kW], b[degC] ,c\n1,2,3\n");
  REQUIRE(csv.columns.size() == 3);
  CHECK(csv.columns[0].name == "a");
  CHECK(csv.columns[0].unit == "kW");
  CHECK(csv.columns[1].name == "b");
  CHECK(csv.columns[1].unit == "degC");
  CHECK(csv.columns[2].unit.empty());
  CHECK(csv.find("b") == 1);
  CHECK_FALSE(csv.find("b[degC]").has_value());
}

TEST_CASE("Comments, CRLF, a byte-order mark and blank lines at the end change nothing", "[config]") {
  const Csv csv = csv_of("\xef\xbb\xbf# title\r\na [m],b\r\n1,x\r\n# between\r\n2,\"y, z\"\r\n\r\n  \r\n");
  REQUIRE(csv.rows() == 2);
  CHECK(csv.lines == std::vector<int>{3, 5});
  CHECK(csv.cell(0, 1) == "x");
  CHECK(csv.cell(1, 1) == "y, z");
}

TEST_CASE("The last line needs no line end", "[config]") {
  CHECK(csv_of("a\n1\n2").rows() == 2);
}

TEST_CASE("Numbers are read to the last digit, in the head's unit", "[config]") {
  const Csv csv = csv_of("a [kW]\n+1.5\n-2e-3\n.25\n");
  const auto to_watt = csv.conversion(0, units::Dimension::power);
  CHECK(csv.number(0, 0, to_watt) == 1500);
  CHECK(csv.number(1, 0, to_watt) == Approx(-2).epsilon(1e-15));
  CHECK(csv.number(2, 0, to_watt) == 250);
}

TEST_CASE("A cell that is no finite number is refused at its line and column", "[config]") {
  const Csv csv = csv_of("\u00e4 [W],b [W]\n  1 , x\n1e999,nan\n1 2,0x1F\n,1.5.2\n");
  const units::Conversion none;
  CHECK_THROWS_WITH(csv.number(0, 1, none), EndsWith("t.csv:2:7: b: \"x\" is not a number"));
  CHECK_THROWS_WITH(csv.number(1, 0, none), EndsWith("t.csv:3:1: \u00e4: \"1e999\" is not a finite number"));
  CHECK_THROWS_WITH(csv.number(1, 1, none), Contains("\"nan\" is not a finite number"));
  CHECK_THROWS_WITH(csv.number(2, 0, none), Contains("\"1 2\" is not a number"));
  CHECK_THROWS_WITH(csv.number(2, 1, none), Contains("\"0x1F\" is not a number"));
  CHECK_THROWS_WITH(csv.number(3, 0, none), Contains("a value is missing"));
  CHECK_THROWS_WITH(csv.number(3, 1, none), Contains("t.csv:5:2: b: \"1.5.2\" is not a number"));
}

TEST_CASE("Columns are counted in letters, not bytes", "[config]") {
  const Csv csv = csv_of("name,b [W]\n\u00e4\u00f6\u00fc,x\n");
  CHECK_THROWS_WITH(csv.number(0, 1, {}), EndsWith("t.csv:2:5: b: \"x\" is not a number"));
}

TEST_CASE("A table that is none is refused at its line", "[config]") {
  CHECK_THROWS_WITH(csv_of(""), EndsWith("t.csv:1: the file is empty: no line names columns"));
  CHECK_THROWS_WITH(csv_of("# only\n"), EndsWith("the file is empty: no line names columns"));
  CHECK_THROWS_WITH(csv_of("a,b\n"), EndsWith("t.csv: the file has no rows below its first line"));
  CHECK_THROWS_WITH(csv_of("a,b\n1\n"), EndsWith("t.csv:2: the row has 1 cells, the first line names 2 columns"));
  CHECK_THROWS_WITH(csv_of("a,b,a\n1,2,3\n"), EndsWith("t.csv:1:5: repeated column \"a\""));
  CHECK_THROWS_WITH(csv_of("a [kW,b\n1,2\n"), EndsWith("t.csv:1:1: \"a [kW\" is not a column's head: name [unit]"));
  CHECK_THROWS_WITH(csv_of("a\tb\n1\t2\n"), Contains("columns are parted by tabs"));
  CHECK_THROWS_WITH(csv_of("a\n\n1\n"), EndsWith("t.csv:2: a blank line among the rows"));
  CHECK_THROWS_WITH(csv_of("a,b\n\"1,2\n"), EndsWith("t.csv:2:1: a quotation mark is not closed on its line"));
  CHECK_THROWS_WITH(csv_of("a,b\n\"1\"2,2\n"), EndsWith("a comma is expected after the closing quotation mark"));
  CHECK_THROWS_WITH(csv_of(std::string("a\n1\0\n", 5)), Contains("t.csv:2:2: a control character"));
}

TEST_CASE("The digest is of the file's bytes", "[config]") {
  CHECK(csv_of("a\n1\n").sha256 == sha256("a\n1\n"));
}
