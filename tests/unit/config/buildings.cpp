#include <numeric>

#include "tests/catch.hpp"
#include "tests/unit/config/edited.hpp"

using namespace stillground;
using stillground::testing::Contains;

namespace {

const std::string columns = "  file: loads.csv\\n  heating: heating_kw\\n  cooling: cooling_kw\\n";
const std::string months =
    "file months.csv = heating_energy [MWh],heating_peak [kW],heating_peak_hours [h],cooling_energy [kWh]\\n"
    "10,40,8,0\\n8,40,8,0\\n6,30,6,0\\n3,20,4,0\\n1,10,2,500\\n0,0,0,900\\n0,0,0,1500\\n0,0,0,1200\\n0,0,0,300\\n"
    "4,20,4,0\\n7,30,6,0\\n9,40,8,0\\n";

model::BuildingLoads loads_of(const std::string& text, const std::string& years = "1", const std::string& file = "") {
  std::vector<std::string> edits{"site " + columns + " => " + text, "site years: 1 => years: " + years};
  if (!file.empty()) edits.push_back(file);
  return std::get<model::BuildingLoads>(testing::read_edited(edits).loads);
}

double energy(const std::vector<double>& values, std::size_t from, std::size_t to) {
  return 3600 * std::accumulate(values.begin() + static_cast<std::ptrdiff_t>(from),
                                values.begin() + static_cast<std::ptrdiff_t>(to), 0.0);
}

}  // namespace

TEST_CASE("A monthly table keeps each month's energy and holds its peak at the month's end", "[config]") {
  const auto loads = loads_of("  monthly: months.csv\\n", "1", months);
  REQUIRE(loads.heating.values.size() == 8760);
  CHECK(energy(loads.heating.values, 0, 744) == Approx(10 * 3.6e9).epsilon(1e-12));
  CHECK(energy(loads.heating.values, 0, 8760) == Approx(48 * 3.6e9).epsilon(1e-12));
  CHECK(loads.heating.values[743] == Approx(40e3).epsilon(1e-14));
  CHECK(loads.heating.values[744 - 8] == Approx(40e3).epsilon(1e-14));
  CHECK(loads.heating.values[744 - 9] == Approx((10e6 - 40e3 * 8) / (744 - 8)).epsilon(1e-12));
  CHECK(energy(loads.cooling.values, 0, 8760) == Approx(4400 * 3.6e6).epsilon(1e-12));
  CHECK(loads.hot_water.values.empty());
}

namespace {

/// Twelve months of 100 kWh whose column `month` reads so.
std::string months_named(const std::vector<std::string>& names) {
  std::string text = "file months.csv = month,heating_energy [kWh]\\n";
  for (const std::string& name : names) text += name + ",100\\n";
  return text;
}

model::Scenario with_months(const std::vector<std::string>& names) {
  return testing::read_edited({"site " + columns + " =>   monthly: months.csv\\n", months_named(names)});
}

}  // namespace

TEST_CASE("The months of a monthly table are read in the ways people write them", "[config]") {
  const std::vector<std::vector<std::string>> ways = {
      {"1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12"},
      {"Jan", "FEB", "mar", "Apr.", "May", "Jun", "Jul", "Aug", "Sept", "October", "Nov", "December"},
      {"2027-01", "2027-02", "2027-03", "2027-04", "2027-05", "2027-06", "2027-07", "2027-08", "2027-09", "2027-10",
       "2027-11", "2027-12"}};
  for (const auto& names : ways) {
    CAPTURE(names.front());
    CHECK(with_months(names).warnings.empty());
  }
}

TEST_CASE("A monthly table out of the calendar's order is refused at its first month that is", "[config]") {
  std::vector<std::string> names = {"1", "2", "4", "3", "5", "6", "7", "8", "9", "10", "11", "12"};
  CHECK_THROWS_WITH(with_months(names), Contains("months.csv:4:1: month: \"4\" stands where Mar is due"));
  names = {"Oct", "Nov", "Dec", "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep"};
  CHECK_THROWS_WITH(with_months(names), Contains("months.csv:2:1: month: \"Oct\" stands where Jan is due"));
}

TEST_CASE("A month that cannot be read is warned of once", "[config]") {
  const auto warnings = with_months({"janvier", "février", "mars", "avril", "mai", "juin", "juillet", "août",
                                     "septembre", "octobre", "novembre", "décembre"})
                            .warnings;
  REQUIRE(warnings.size() == 1);
  CHECK_THAT(warnings[0].line(), Contains("months.csv:2:1: \"janvier\" is no month that can be read"));
}

TEST_CASE("Loads that grow do so from run-year to run-year", "[config]") {
  const auto plain = loads_of(columns, "3");
  const auto grown = loads_of(columns + "  growth: 2 %\\n", "3");
  REQUIRE(grown.heating.values.size() == 3 * 8760);
  const long july = 181 * 24;  // the run's start
  for (const long hour : {5L, 4000L, 8759L}) {
    CHECK(grown.heating.at(july + hour) == plain.heating.at(july + hour));
    CHECK(grown.heating.at(july + hour + 8760) == Approx(1.02 * plain.heating.at(july + hour)).epsilon(1e-14));
    CHECK(grown.heating.at(july + hour + 17520) == Approx(1.0404 * plain.heating.at(july + hour)).epsilon(1e-14));
  }
}

TEST_CASE("Several buildings are summed hour by hour, each from its own day", "[config]") {
  const std::string building = "{file: loads.csv, heating: heating_kw, cooling: cooling_kw";
  const auto one = loads_of(columns, "2");
  const auto two = loads_of("  buildings:\\n    - " + building + "}\\n    - " + building +
                                ", times: 3, from: 2028-01-01, cooling_by: fluid}\\n",
                            "2");
  const long july = 181 * 24, to_january = 184 * 24;
  for (const long hour : {5L, 4000L, to_january - 1}) {
    CHECK(two.heating.at(july + hour) == one.heating.at(july + hour));
    CHECK(two.cooling_direct.at(july + hour) == 0);
  }
  for (const long hour : {to_january, to_january + 77, 17519L}) {
    CHECK(two.heating.at(july + hour) == Approx(4 * one.heating.at(july + hour)).epsilon(1e-14));
    CHECK(two.cooling.at(july + hour) == one.cooling.at(july + hour));
    CHECK(two.cooling_direct.at(july + hour) == Approx(3 * one.cooling.at(july + hour)).epsilon(1e-14));
  }
}

TEST_CASE("Hot water goes through its own curve, or through that of heating where it has none", "[config]") {
  const std::vector<std::string> as_hot_water{"site " + columns + " =>   file: loads.csv\\n  hot_water: heating_kw\\n"};
  const auto shared = testing::read_edited(as_hot_water);
  CHECK(std::get<model::BuildingLoads>(shared.loads).hot_water.values.size() == 8760);
  REQUIRE(shared.heat_pump);
  CHECK(shared.heat_pump->hot_water_cop.size() == 3);
  CHECK(shared.heat_pump->heating_cop.empty());
  auto own = as_hot_water;
  own.push_back("site   heating_cop: => hot_water_cop: {\"0 degC\": 2.4, \"10 degC\": 2.9}\\n  heating_cop:");
  own.back() = "site heat_pump:\\n => heat_pump:\\n  hot_water_cop: {\"0 degC\": 2.4, \"10 degC\": 2.9}\\n";
  CHECK(testing::read_edited(own).heat_pump.value().hot_water_cop.size() == 2);
}
