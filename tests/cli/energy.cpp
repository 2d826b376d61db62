#include <nlohmann/json.hpp>

#include <cmath>
#include <sstream>

#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground::testing;

namespace {

/// The sum of one column of comma-separated values, by its heading.
double sum_of(const std::string& csv, const std::string& heading) {
  std::istringstream lines(csv);
  std::string line, cell;
  while (std::getline(lines, line) && line.starts_with("#")) {
  }
  std::istringstream head(line);
  int column = 0, n = 0;
  for (column = -1; std::getline(head, cell, ','); ++n) {
    if (cell == heading) column = n;
  }
  REQUIRE(column >= 0);
  double sum = 0;
  while (std::getline(lines, line)) {
    std::istringstream row(line);
    for (int i = 0; i <= column; ++i) std::getline(row, cell, ',');
    sum += std::stod(cell);
  }
  return sum;
}

}  // namespace

TEST_CASE("The hours that eft writes add up to the electricity that it tells") {
  const PairCase pair;
  REQUIRE(run({"stillground", "run", "pair.yaml"}, pair.folder).status == 0);
  const Outcome hours = run({"stillground", "eft", "pair.h5", "--csv", "-", "--table", "hourly"}, pair.folder);
  REQUIRE(hours.status == 0);
  CHECK_THAT(hours.out, Contains("\nfrom,time [h],eft [degC],lft [degC],flow [kg s-1],heat_to_ground [W],") &&
                            Contains("\n2029-06-30 23:00,17520,"));
  const Outcome told = run({"stillground", "eft", "pair.h5", "--json"}, pair.folder);
  const auto json = nlohmann::json::parse(told.out);
  const double kwh = json.at("energy").at("power").at("value");
  CHECK(sum_of(hours.out, "power [W]") / 1000 == Approx(kwh).epsilon(1e-6));  // hours are written to ten digits
  CHECK(json.at("energy").at("power").at("units") == "kWh");
  const auto yearly = json.at("yearly").at("power").at("values");
  CHECK(yearly.at(0).get<double>() + yearly.at(1).get<double>() == Approx(kwh).epsilon(1e-9));
  // The building's heat is the load file's: 12 hours a day of 4 kW in 205 days, 6 of 3 kW in 100.
  CHECK(json.at("energy").at("heating").at("value").get<double>() == Approx(2 * 205 * 12 * 4e-3).epsilon(1e-9));
  CHECK(json.at("energy").at("cooling").at("value").get<double>() == Approx(2 * 100 * 6 * 3e-3).epsilon(1e-9));
  // Every COP of this scenario lies between 3.1 and 4.3, and 4.5 and 6.5.
  CHECK(json.at("energy").at("performance_heating").at("value").get<double>() > 3.1);
  CHECK(json.at("energy").at("performance_heating").at("value").get<double>() < 4.3);
  CHECK(json.at("energy").at("performance_cooling").at("value").get<double>() > 4.5);
}

TEST_CASE("Which part of the cooling needed no heat pump is told") {
  const PairCase pair;
  pair.write_variant("direct.yaml", "  cooling: cooling\n", "  cooling: cooling\n  cooling_by: fluid\n");
  REQUIRE(run({"stillground", "run", "direct.yaml"}, pair.folder).status == 0);
  CHECK_THAT(run({"stillground", "eft", "direct.h5"}, pair.folder).out, Contains("direct share"));
  const auto json = nlohmann::json::parse(run({"stillground", "eft", "direct.h5", "--json"}, pair.folder).out);
  CHECK(json.at("energy").at("direct_share").at("value") == 1.0);
  CHECK(json.at("energy").at("power_cooling").at("value") == 0.0);
}

TEST_CASE("A table is only asked for where it is to be written") {
  const PairCase pair;
  const Outcome outcome = run({"stillground", "eft", "pair.h5", "--table", "hourly"}, pair.folder);
  CHECK(outcome.status == 2);
  CHECK_THAT(outcome.err, Contains("--table requires --csv"));
}
