#include "engine/config/hourly.hpp"

#include <fstream>

#include "tests/catch.hpp"
#include "tests/unit/base/scratch.hpp"

using namespace stillground;
using namespace stillground::config;
using stillground::testing::Contains;

namespace {

const Where asked{{"site.yaml", 30, 9}, "loads.file"};

/// A file whose rows count themselves.
Csv counting_rows(int rows, const testing::Scratch& scratch) {
  std::ofstream out(scratch.folder / "loads.csv");
  out << "p [W]\n";
  for (int i = 0; i < rows; ++i) out << i << '\n';
  out.close();
  return read_csv(scratch.folder / "loads.csv", asked);
}

HourlyRows rows_of(int rows, std::optional<Date> first_row = std::nullopt) {
  const testing::Scratch scratch;
  return hourly_rows(counting_rows(rows, scratch), first_row, asked);
}

}  // namespace

TEST_CASE("A year of 8760 rows is used as it is", "[config]") {
  const HourlyRows rows = rows_of(8760);
  CHECK(rows.kept.size() == 8760);
  CHECK(rows.kept.back() == 8759);
  CHECK(rows.leap_days == 0);
}

TEST_CASE("Of 8784 rows 29 February is left out", "[config]") {
  const HourlyRows rows = rows_of(8784);
  REQUIRE(rows.kept.size() == 8760);
  CHECK(rows.leap_days == 1);
  CHECK(rows.kept[59 * 24 - 1] == 59 * 24 - 1);  // 28 February, 23 h
  CHECK(rows.kept[59 * 24] == 60 * 24);          // 1 March, 0 h
  CHECK(rows.kept.back() == 8783);
}

TEST_CASE("A leap year that begins in July has its 29 February in its second half", "[config]") {
  const HourlyRows rows = rows_of(8784, Date{2027, 7, 1});
  const std::size_t to_march = (184 + 59) * 24;  // July to December, January and February
  CHECK(rows.first_hour == 181 * 24);
  CHECK(rows.kept[to_march - 1] == to_march - 1);
  CHECK(rows.kept[to_march] == to_march + 24);
}

TEST_CASE("A year that begins on 1 March ends with its 29 February", "[config]") {
  const HourlyRows rows = rows_of(8784, Date{2027, 3, 1});
  CHECK(rows.kept.size() == 8760);
  CHECK(rows.kept.back() == 8759);
}

TEST_CASE("The calendar tells which of several years has the leap day", "[config]") {
  const HourlyRows rows = rows_of(3 * 8760 + 24, Date{2027, 1, 1});  // 2028 is a leap year
  REQUIRE(rows.kept.size() == 3 * 8760);
  CHECK(rows.kept[8760 + 59 * 24 - 1] == 8760 + 59 * 24 - 1);
  CHECK(rows.kept[8760 + 59 * 24] == 8760 + 60 * 24);
  const HourlyRows from_july = rows_of(2 * 8760 + 24, Date{2026, 7, 1});  // the second year holds February 2028
  CHECK(from_july.kept[8760 + 243 * 24 - 1] == 8760 + 243 * 24 - 1);
  CHECK(from_july.kept[8760 + 243 * 24] == 8760 + 244 * 24);
}

TEST_CASE("Years of both lengths need a true first row", "[config]") {
  CHECK_THROWS_WITH(rows_of(3 * 8760 + 24),
                    Contains("site.yaml:30:9: loads.file:") && Contains("give first_row with the true year"));
  CHECK_THROWS_WITH(rows_of(3 * 8760 + 24, Date{2029, 1, 1}),
                    Contains("has 3 years with 1 leap days, the calendar from 2029-01-01 has 0"));
}

TEST_CASE("Rows that make no whole years are refused at the last one", "[config]") {
  CHECK_THROWS_WITH(rows_of(8759),
                    Contains("loads.csv:8760: 8759 hourly rows end here") && Contains("1 too few for one year"));
  CHECK_THROWS_WITH(rows_of(8785), Contains("25 too many for one year"));
  CHECK_THROWS_WITH(rows_of(8761 + 8760), Contains("1 too many for 2 years"));
  CHECK_THROWS_WITH(rows_of(12), Contains("8748 too few for one year"));
}

TEST_CASE("A series in another unit than power is refused at its head", "[config]") {
  const testing::Scratch scratch;
  std::ofstream(scratch.folder / "x.csv") << "a [kWh]\n1\n";
  const Csv csv = read_csv(scratch.folder / "x.csv", asked);
  CHECK_THROWS_WITH(hourly_series(csv, {{0}, 0, 0}, "a", asked, 0), Contains("x.csv:1:1: a: \"kWh\" is not a power"));
}
