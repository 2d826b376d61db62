#include <functional>

#include "engine/job/warnings.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

namespace {

using Limit = model::Limit;
using Change = std::function<void(model::Scenario&)>;
using stillground::testing::Contains;

const std::vector<std::string> keys = {"bore.top",
                                       "bore.depth",
                                       "field.positions",
                                       "fluid",
                                       "flow",
                                       "loads",
                                       "heat_pump.heating_cop",
                                       "heat_pump.hot_water_cop",
                                       "heat_pump.cooling_cop",
                                       "run.start",
                                       "loads.peak",
                                       "limits.eft_min",
                                       "limits.eft_max",
                                       "limits.lft_min",
                                       "limits.lft_max",
                                       "limits.mean_fluid_min",
                                       "limits.mean_fluid_max"};

/// A sound scenario of four bores whose keys stand one a line.
model::Scenario sound() {
  auto s = test::scenario(2, 2);
  s.flow.rate = 0.45e-3;
  s.limits = {{"eft_min", Limit::Quantity::eft, Limit::Side::least, Limit::Over::hour, 272.15},
              {"eft_max", Limit::Quantity::eft, Limit::Side::most, Limit::Over::hour, 303.15}};
  int line = 0;
  for (const std::string& key : keys) s.places[key] = {s.file, ++line, 0};
  return s;
}

model::BuildingLoads& building(model::Scenario& s) {
  return std::get<model::BuildingLoads>(s.loads);
}

/// Four bores of 90 m.
constexpr double metres = 360;

Change with_limit(const char* name, Limit::Quantity quantity, Limit::Side side, double value) {
  return [=](model::Scenario& s) {
    s.flow.reynolds_min = 0;
    s.limits = {{name, quantity, side, Limit::Over::hour, value}};
  };
}

std::vector<Warning> before(const model::Scenario& s) {
  const assembly::Assembly assembly = assembly::assemble(s);
  return job::warnings_before(assembly);
}

/// What is changed in the sound scenario, and the one warning that follows.
struct Case {
  std::string what;
  Change change;
  std::string key;    ///< where the warning points
  std::string words;  ///< in its text
  std::string range;  ///< in its range
};

const std::vector<Case> cases = {
    {"a deep trench", [](auto& s) { s.bore.top = 2.5; }, "bore.top", "the header trench is 2.5 m deep", "up to 2.0 m"},
    {"deep bores", [](auto& s) { s.bore.depth = 305; }, "bore.depth", "a bore ends 307 m below the surface",
     "usual up to 300 m; common practice, no source"},
    {"one deep bore among surveyed ones",
     [](auto& s) {
       s.layout = model::Positions{{{0, 0, 1.8, 90}, {6, 0, 1.8, 90}, {0, 6, 1.8, 90}, {6, 6, 1.8, 320}}};
     },
     "field.positions", "a bore ends 322 m below", "300 m"},
    {"much heat taken", [](auto& s) { building(s).heating.values[400] = 9.5e3 * 4; }, "loads",
     "W/m of bore are taken out of the ground", "usual up to 70 W/m; common practice, no source"},
    {"much heat given", [](auto& s) { building(s).cooling.values[4500] = 8.5e3 * 4; }, "loads",
     "W/m of bore are put into the ground", "usual up to 100 W/m"},
    {"loads in W under a head that says kW",
     [](auto& s) {
       s.limits.clear();
       s.loads = model::GroundLoads{{std::vector<double>(hours_per_year, 0)}};
       std::get<model::GroundLoads>(s.loads).to_ground.values[400] = -2300 * metres;
     },
     "loads", "at the peak 2300 W/m of bore are taken out of the ground: are the loads in W under a head that says kW",
     "70 W/m"},
    {"much heat taken in a year", [](auto& s) { s.loads = model::ConstantGroundLoad{-20 * metres}; }, "loads",
     "in a year 175 kWh/m of bore are taken out of the ground", "usual up to 150 kWh/m"},
    {"much heat given in a year", [](auto& s) { s.loads = model::ConstantGroundLoad{20 * metres}; }, "loads",
     "in a year 175 kWh/m of bore are put into the ground", "usual up to 150 kWh/m"},
    {"loads in kW under a head that says W", [](auto& s) { s.loads = model::ConstantGroundLoad{-0.03 * metres}; },
     "loads", "the largest load is only 0.030 W/m of bore", "usual from 20 W/m"},
    {"no load at all", [](auto& s) { s.loads = model::ConstantGroundLoad{0}; }, "loads", "no hour has a load",
     "usual from 20 W/m"},
    {"fast flow", [](auto& s) { s.flow.rate = 2.5e-3; }, "flow", "the fluid runs at 2.7 m/s in the pipe",
     "usual up to 2.5 m/s; common practice, no source"},
    {"fast flow through one bore of several",
     [](auto& s) {
       s.layout = model::Positions{{{0, 0, 1.8, 90}, {6, 0, 1.8, 90}, {0, 6, 1.8, 90}, {6, 6, 1.8, 90}}};
       std::get<model::Positions>(s.layout).sites[2].flow_weight = 6;
     },
     "flow", "the fluid runs at 2.9 m/s", "2.5 m/s"},
    {"slow flow at part load",
     [](auto& s) {
       s.flow.varies = model::Flow::Varies::with_load;
       s.flow.least = 0.2;
     },
     "flow", "at the least flow, 20 % of full, the flow in the loops is laminar", "Re 2300 and more"},
    {"a peak within the hour with flow that follows the load",
     [](auto& s) {
       s.flow.reynolds_min = 0;
       s.flow.varies = model::Flow::Varies::with_load;
       s.peak = model::LoadPeak{1.4, 600};
     },
     "loads.peak", "a peak within the hour is met at the hour's flow", "does not vary with the load"},
    {"slow flow in the first stage",
     [](auto& s) {
       s.flow.varies = model::Flow::Varies::in_stages;
       s.flow.stages = 4;
     },
     "flow", "at the least flow, 25 % of full, the flow in the loops is laminar", "Re 2300 and more"},
    {"a least EFT above the ground's", with_limit("eft_min", Limit::Quantity::eft, Limit::Side::least, 290),
     "limits.eft_min", "eft_min of 16.9 degC is broken by the undisturbed ground itself", "below the ground's"},
    {"a greatest EFT below the ground's", with_limit("eft_max", Limit::Quantity::eft, Limit::Side::most, 280),
     "limits.eft_max", "eft_max of 6.9 degC is broken by the undisturbed ground itself", "above the ground's"},
    {"a least LFT above the ground's", with_limit("lft_min", Limit::Quantity::lft, Limit::Side::least, 290),
     "limits.lft_min", "lft_min of 16.9 degC is broken", "below the ground's"},
    {"a greatest mean below the ground's",
     with_limit("mean_fluid_max", Limit::Quantity::mean_fluid, Limit::Side::most, 280), "limits.mean_fluid_max",
     "mean_fluid_max of 6.9 degC is broken", "above the ground's"},
    {"a least LFT near freezing", with_limit("lft_min", Limit::Quantity::lft, Limit::Side::least, 266.15),
     "limits.lft_min", "lft_min of -7.0 degC lets the fluid leave the heat pumps at -7.0 degC",
     "3.0 K above the freezing point"},
    {"a least EFT that lets the fluid leave near freezing",
     with_limit("eft_min", Limit::Quantity::eft, Limit::Side::least, 268.65), "limits.eft_min",
     "eft_min of -4.5 degC lets the fluid leave", "3.0 K above the freezing point"},
    {"heating by a curve that falls",
     [](auto& s) {
       s.heat_pump->heating_cop = {{268.15, 4.4}, {283.15, 3.0}};
     },
     "heat_pump.heating_cop", "the COP of heating falls from 4.4 at -5.0 degC to 3 at 10.0 degC",
     "warmer fluid raises it"},
    {"hot water by a curve that falls",
     [](auto& s) {
       s.heat_pump->hot_water_cop = {{268.15, 3.4}, {283.15, 2.0}};
     },
     "heat_pump.hot_water_cop", "the COP of hot water falls", "warmer fluid raises it"},
    {"cooling by a curve that rises",
     [](auto& s) {
       s.heat_pump->cooling_cop = {{283.15, 3.9}, {308.15, 7.0}};
     },
     "heat_pump.cooling_cop", "the COP of cooling rises from 3.9 at 10.0 degC to 7 at 35.0 degC",
     "warmer fluid lowers it"},
    {"an EER for a COP",
     [](auto& s) {
       s.heat_pump->cooling_cop = {{283.15, 18.0}, {308.15, 11.0}};
     },
     "heat_pump.cooling_cop", "the COP of cooling is 18 at 10.0 degC: is it an EER", "usual up to 12"},
    {"a heating COP beyond machines",
     [](auto& s) {
       s.heat_pump->heating_cop = {{268.15, 3.0}, {283.15, 12.5}};
     },
     "heat_pump.heating_cop", "the COP of heating is 12.5 at 10.0 degC", "usual up to 12"},
    {"heating in summer", [](auto& s) { building(s).heating.values[4900] = 5000 * 4; }, "loads",
     "heating peaks in Jul, in summer", "coldest_day"},
    {"cooling in winter", [](auto& s) { building(s).cooling.values[600] = 5000 * 4; }, "loads",
     "cooling peaks in Jan, in winter", "coldest_day"},
    {"heating in summer of a ground without seasons",
     [](auto& s) {
       s.ground.undisturbed = model::MeanOverBore{284};
       building(s).heating.values[4900] = 5000 * 4;
     },
     "loads", "heating peaks in Jul, in summer", "north of the equator"},
    {"a start in another age",
     [](auto& s) {
       s.run.start = {1900, 7, 1};
     },
     "run.start", "the run starts in the year 1900", "usual from 1950 to 2150"},
    {"a start in a far age",
     [](auto& s) {
       s.run.start = {2270, 7, 1};
     },
     "run.start", "the run starts in the year 2270", "usual from 1950 to 2150"},
};

}  // namespace

TEST_CASE("A sound scenario is warned of nothing before the run") {
  for (const Warning& warning : before(sound())) FAIL_CHECK(warning.line());
}

TEST_CASE("Each oddity of a scenario is warned of once, at its place and with what is usual") {
  for (const Case& one : cases) {
    CAPTURE(one.what);
    auto s = sound();
    one.change(s);
    const std::vector<Warning> warnings = before(s);
    std::string lines;
    for (const Warning& each : warnings) lines += each.line() + "\n";
    CAPTURE(lines);
    CHECK(warnings.size() == 1);
    if (warnings.empty()) continue;
    const Warning& warning = warnings.front();
    CHECK_THAT(warning.text, Contains(one.words));
    CHECK_THAT(warning.range, Contains(one.range));
    CHECK(warning.place.line == s.places[one.key].line);
  }
}

TEST_CASE("Seasons are those of the site's own half of the earth") {
  auto s = sound();
  auto& surface = std::get<model::SeasonalSurface>(s.ground.undisturbed);
  surface.coldest = 207 * seconds_per_day;  // July
  CHECK(before(s).size() == 2);             // heats in January, cools in July
  for (auto* series : {&building(s).heating, &building(s).cooling}) series->first_hour = 4380;
  CHECK(before(s).empty());
}

TEST_CASE("What is usual comes in the units that the scenario asks for") {
  auto s = sound();
  s.units = UnitSystem::us;
  s.bore.top = 2.5;
  s.flow.rate = 2.5e-3;
  building(s).heating.values[400] = 9.5e3 * 4;
  s.limits.front().value = 267.65;
  const std::vector<Warning> warnings = before(s);
  REQUIRE(warnings.size() == 4);
  const char* words[] = {"8.2 ft deep", "8.8 ft/s", "Btu/(h ft)", "eft_min of 22.1 degF"};
  for (std::size_t i = 0; i < warnings.size(); ++i) {
    CHECK_THAT(warnings[i].line(), Contains(words[i]));
    CHECK_THAT(warnings[i].line(), !Contains("degC") && !Contains(" m ") && !Contains("W/m"));
  }
}
