#include "tools/energy/energy.hpp"

#include <cmath>

#include "tests/catch.hpp"
#include "tests/unit/results/made_hours.hpp"
#include "tools/results/compare_facts.hpp"
#include "tools/results/eft_view.hpp"
#include "tools/results/energy_view.hpp"

using namespace stillground;
using namespace stillground::results;
using stillground::testing::Contains;
using stillground::testing::made_hours;

namespace {

const std::vector<record::CopCurveRow> curves = {{"heating", {273.15, 283.15}, {3, 5}}, {"cooling", {293.15}, {4}}};

/// 8 kW of heating for 2 kW in even hours, in odd ones 6 kW of cooling, a third of it direct, for 1 kW; all at 5 degC.
std::vector<record::Hour> in_turn(std::size_t count) {
  std::vector<record::Hour> hours = made_hours(count, [](std::size_t) { return 5.0; });
  for (std::size_t h = 0; h < count; ++h) {
    record::Hour& hour = hours[h];
    if (h % 2 == 0) {
      hour.heating = 8000;
      hour.power = 2000;
      hour.heat_to_ground = -6000;
    } else {
      hour.cooling = 6000;
      hour.cooling_direct = 2000;
      hour.power = hour.power_cooling = 1000;
      hour.heat_to_ground = 7000;
    }
  }
  return hours;
}

FluidSummary summary_of(int years, bool has_heat_pump = true) {
  record::Header header;
  header.start = {2027, 7, 1};
  header.years = years;
  header.has_heat_pump = has_heat_pump;
  if (has_heat_pump) header.cop_curves = curves;
  auto hours = in_turn(static_cast<std::size_t>(8760 * years));
  if (!has_heat_pump) {
    for (auto& hour : hours) hour = {hour.eft, hour.lft, hour.flow, hour.heat_to_ground};
  }
  return summarise(header, hours);
}

}  // namespace

TEST_CASE("Heat over electricity is the seasonal performance of each duty and of all") {
  const energy::Sum sum = energy::sum_of(in_turn(100), curves);
  CHECK(sum.performance_heating() == Approx(8.0 / 2));
  CHECK(sum.performance_cooling() == Approx(4.0 / 1));  // what is cooled directly takes no electricity
  CHECK(sum.performance() == Approx((8.0 + 6) / (2 + 1)));
  CHECK(sum.direct_share() == Approx(1.0 / 3));
  CHECK(sum.power == Approx(50 * 3000.0 * 3600));
}

TEST_CASE("Heat from and into the ground are told apart, and what is left of both is the building's and the pumps'") {
  const energy::Sum sum = energy::sum_of(in_turn(100), curves);
  CHECK(sum.from_ground == Approx(50 * 6000.0 * 3600));
  CHECK(sum.into_ground == Approx(50 * 7000.0 * 3600));
  CHECK(sum.into_ground - sum.from_ground == Approx(sum.cooling - sum.heating + sum.power));  // first law
}

TEST_CASE("Hours in which a duty needs its curve beyond the points are counted, those without the duty not") {
  const energy::Sum sum = energy::sum_of(in_turn(100), curves);
  CHECK(sum.heating_held == 0);   // 5 degC lies within 0 to 10 degC
  CHECK(sum.cooling_held == 50);  // and below the only point of cooling
  CHECK(sum.curves_known);
  CHECK_FALSE(energy::sum_of(in_turn(100), {}).curves_known);
}

TEST_CASE("Hours cooled by the fluid alone need no curve") {
  auto hours = in_turn(100);
  for (auto& hour : hours) hour.cooling_direct = hour.cooling;
  CHECK(energy::sum_of(hours, curves).cooling_held == 0);
}

TEST_CASE("Without electricity there is no performance") {
  CHECK(std::isnan(energy::Sum{}.performance()));
  CHECK(std::isnan(energy::Sum{}.performance_heating()));
  CHECK(std::isnan(energy::Sum{}.direct_share()));
}

TEST_CASE("Months and run-years add up to the run") {
  const EnergySummary energy = summary_of(2).energy;
  REQUIRE(energy.months.size() == 24);
  energy::Sum months{.curves_known = true};
  for (const energy::Sum& month : energy.months) months = months + month;
  CHECK(months.power == Approx(energy.all.power).epsilon(1e-12));
  CHECK(months.from_ground == Approx(energy.all.from_ground).epsilon(1e-12));
  CHECK(months.cooling_held == energy.all.cooling_held);
  CHECK(energy.all.cooling_held == 8760);
}

TEST_CASE("Electricity is told in kWh in both unit systems, heat in the system's own") {
  const FluidSummary summary = summary_of(1);
  const std::string si = energy_text(summary, UnitSystem::si), us = energy_text(summary, UnitSystem::us);
  CHECK_THAT(si, Contains("\nmean         35.0     26.3            33        13140  4.67      4.00      4.00         "
                          "26.3         30.7\n"));
  CHECK_THAT(us, Contains("kWh") && Contains("kBtu") && !Contains("MWh"));
  CHECK_THAT(us, Contains("\nmean       119561"));  // 35.04 MWh of 3412.14 kBtu
  CHECK_THAT(si, Contains("held beyond its curve's points: heating 0, cooling 4380"));
}

TEST_CASE("A ground's own load has heat only") {
  const FluidSummary summary = summary_of(1, false);
  CHECK_THAT(energy_text(summary, UnitSystem::si), Contains("from ground") && !Contains("SPF") && !Contains("kWh"));
  CHECK(energy_json(summary.energy).size() == 2);
}

TEST_CASE("Tables of months and run-years carry the electricity") {
  const FluidSummary summary = summary_of(2);
  const present::Json json = present::columns(year_table(summary));
  CHECK(json["power"]["units"] == "kWh");
  CHECK(json["power"]["values"][1].get<double>() == Approx(13140));
  CHECK(json["performance_heating"]["values"][0].get<double>() == Approx(4));
  CHECK(present::columns(month_table(summary))["from_ground"]["values"].size() == 24);
}

TEST_CASE("The table of hours has every hour as the result has it") {
  record::Header header;
  header.start = {2027, 7, 1};
  header.has_heat_pump = true;
  const present::Table table = hour_table(header, in_turn(26));
  REQUIRE(table.rows.size() == 26);
  CHECK(std::get<std::string>(table.rows[25][0]) == "2027-07-02 01:00");
  CHECK(std::get<long>(table.rows[25][1]) == 26);
  CHECK(std::get<double>(table.rows[25][2]) == Approx(5));
  CHECK(std::get<double>(table.rows[25].back()) == 1000);
}

TEST_CASE("Layouts are compared by their electricity, and one without heat pumps has none") {
  Layout with, without;
  with.years = without.years = 1;
  with.energy = summary_of(1).energy;
  without.energy = summary_of(1, false).energy;
  with.fluid = without.fluid = summary_of(1).years;
  const auto facts = facts_of({with, without});
  const auto find = [&](const std::string& name) {
    for (const Fact& fact : facts) {
      if (fact.column.name == name) return fact;
    }
    throw std::runtime_error("no fact " + name);
  };
  CHECK(std::get<double>(find("power").cells[0]) == Approx(13140));
  CHECK(std::holds_alternative<std::monostate>(find("power").cells[1]));
  CHECK(std::get<double>(find("from_ground").cells[1]) == Approx(26.28));
  CHECK(std::get<long>(find("hours_held").cells[0]) == 4380);
}
