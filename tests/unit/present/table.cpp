#include "tools/present/table.hpp"
#include "engine/base/paragraph.hpp"
#include "tests/catch.hpp"

#include <limits>

using namespace stillground::present;

namespace {

const double not_a_number = std::numeric_limits<double>::quiet_NaN();

}  // namespace

TEST_CASE("Numbers stand at the right under their units, text at the left") {
  const Table table{{{"year", "", "run-year"}, {"date", "", "from"}, {"eft_min", "degC", "least", 1}},
                    {{1L, std::string("2027-07-01"), 3.26}, {25L, std::string("2051-07-01"), -12.34}}};
  CHECK(text(table) ==
        "run-year  from        least\n"
        "                       degC\n"
        "       1  2027-07-01    3.3\n"
        "      25  2051-07-01  -12.3\n");
}

TEST_CASE("A table without units has no line for them") {
  CHECK(text({{{"a", ""}, {"b", ""}}, {{1L, 2L}}}) == "a  b\n1  2\n");
}

TEST_CASE("A column without a heading shows its name") {
  CHECK(text({{{"flow", "kg/s", "", 0}}, {{2.0}}}) == "flow\nkg/s\n   2\n");
}

TEST_CASE("What is not known is a dash, never a number") {
  CHECK(text({{{"a", ""}, {"b", ""}}, {{Cell(), not_a_number}}}) == "a  b\n-  -\n");
}

TEST_CASE("Letters of any alphabet take one column each") {
  CHECK(stillground::width("Fjärås 6×5") == 10);
  CHECK(text({{{"name", ""}, {"n", ""}}, {{std::string("Fjärås"), 1L}, {std::string("Juniper"), 2L}}}) ==
        "name     n\n"
        "Fjärås   1\n"
        "Juniper  2\n");
}

TEST_CASE("A small negative number is not printed as minus nothing") {
  CHECK(fixed(-0.004, 2) == "0.00");
  CHECK(fixed(-0.006, 2) == "-0.01");
}

TEST_CASE("A table for US readers has their units and figures, its words and counts as they were") {
  const Table kept{{{"bore"}, {"depth", "m", "", 1}, {"eft", "degC", "", 1}, {"hours", "h"}}, {{"A", 100.0, 10.0, 5L}}};
  CHECK(text(in_system(kept, stillground::UnitSystem::us)) ==
        "bore  depth   eft  hours\n"
        "         ft  degF      h\n"
        "A     328.1  50.0      5\n");
  CHECK(text(in_system(kept, stillground::UnitSystem::si)) == text(kept));
}
