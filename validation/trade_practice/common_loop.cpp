#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <variant>

#include "engine/base/temperature.hpp"
#include "engine/simulation/simulation.hpp"
#include "validation/trade_practice/claims.hpp"

namespace stillground::validation {

namespace {

constexpr double tons = 2;              // of refrigeration
constexpr double watts_per_ton = 3517;  // 12,000 BTU/h
constexpr double feet = 0.3048;         // [m]

/// A house that asks for its whole peak for hours at a time: 12 h a day in winter, 8 h a day in summer. Invented.
model::BuildingLoads house(double peak) {
  model::BuildingLoads loads;
  for (int hour = 0; hour < hours_per_year; ++hour) {
    const double season = std::cos(2 * std::numbers::pi * hour / hours_per_year);
    const int of_day = hour % 24;
    loads.heating.values.push_back(season > 0.3 && (of_day < 9 || of_day >= 21) ? peak : 0);
    loads.cooling.values.push_back(season < -0.5 && of_day >= 12 && of_day < 20 ? peak : 0);
  }
  return loads;
}

/// What two years bring, hour by hour.
struct Extremes {
  double coldest = 1e9, warmest = -1e9;         ///< EFT while it flows [K]
  double fall_of_fluid = 0, rise_of_fluid = 0;  ///< largest |LFT - EFT| heating and cooling [K]
  double extracted = 0;                         ///< most heat taken from the ground [W]
  double lowest_mean = 1e9;                     ///< (EFT + LFT)/2 [K]
};

Extremes march(const model::Scenario& scenario) {
  const assembly::Assembly assembly = assembly::assemble(scenario);
  simulation::Simulation simulation(assembly, 1);
  Extremes e;
  while (!simulation.finished()) {
    const record::Hour hour = simulation.march_hour();
    if (hour.flow == 0) continue;
    e.coldest = std::min(e.coldest, hour.eft);
    e.warmest = std::max(e.warmest, hour.eft);
    e.fall_of_fluid = std::max(e.fall_of_fluid, hour.eft - hour.lft);
    e.rise_of_fluid = std::max(e.rise_of_fluid, hour.lft - hour.eft);
    e.extracted = std::max(e.extracted, -hour.heat_to_ground);
    e.lowest_mean = std::min(e.lowest_mean, (hour.eft + hour.lft) / 2);
  }
  return e;
}

}  // namespace

model::Scenario common_loop() {
  model::Scenario s;
  s.ground.layers = {{std::numeric_limits<double>::infinity(), "rock", {2.3, 2.3e6}}};
  s.ground.undisturbed = model::MeanOverBore{12 + zero_celsius};
  s.bore.top = 6 * feet;
  s.bore.depth = 400 * feet;
  s.bore.diameter = 0.1524;
  s.bore.loop = model::SingleU{0.075};
  s.bore.pipe = {"", 0.04216, 0.003833, 0.40, 2.1e6, 1.5e-6};
  s.bore.grout = {"", {1.5, 3.0e6}};
  s.layout = model::Grid{1, 1, 6};
  s.fluid = {model::Antifreeze::propylene_glycol, 0.2, model::Fluid::Basis::mass};
  s.flow = {tons * 3 * 0.06309e-3, model::Flow::Amount::per_bore, model::Flow::Runs::with_load};  // 3 gpm a ton
  s.loads = house(tons * watts_per_ton);
  s.heat_pump =
      model::HeatPump{{{268.15, 3.1}, {273.15, 3.5}, {283.15, 4.4}}, {{288.15, 6.0}, {298.15, 4.9}, {308.15, 3.9}}};
  s.run.start = {2027, 7, 1};
  s.run.years = 2;
  return s;
}

void judge_temperatures(Check& check) {
  const model::Scenario s = common_loop();
  const Extremes e = march(s);
  auto& claim = check.claim(
      {"practice-temperatures", "a common loop at common load and flow has common temperatures", Origin::practice,
       "150 to 250 ft of bore and 3 gpm a ton; fluid 5 to 8 degF colder from the ground to the loop in heating, 8 to "
       "12 "
       "degF warmer in cooling; entering fluid 10 to 20 degF below the ground in heating, 20 to 30 degF above it in "
       "cooling; 30 to 60 W/m of heat taken for a fluid 11 to 17 K colder than the ground",
       "invented: 7 kW (2 tons) of heating and cooling on one bore of 400 ft (122 m), 6 gpm of "
       "20 % propylene glycol, ground "
       "2.3 W/(m K) at 12 degC, enhanced grout; 2 years by the hour, 1,760 h of heating and 970 "
       "h of cooling at full load",
       "the quoted bands: a slip of a factor shows, a per cent does not"});
  constexpr double fahrenheit = 5.0 / 9;  // a degree of it [K]
  const double ground = std::get<model::MeanOverBore>(s.ground.undisturbed).temperature;
  claim.between("fluid colder by, heating [K]", 5 * fahrenheit, 8 * fahrenheit, e.fall_of_fluid);
  claim.between("fluid warmer by, cooling [K]", 8 * fahrenheit, 12 * fahrenheit, e.rise_of_fluid);
  claim.between("coldest entering fluid below the ground [K]", 10 * fahrenheit, 20 * fahrenheit, ground - e.coldest);
  claim.between("warmest entering fluid above the ground [K]", 20 * fahrenheit, 30 * fahrenheit, e.warmest - ground);
  // The field is linear: this is the rate that would have brought 14 K.
  claim.between("heat taken for a fluid 14 K below the ground [W/m]", 30, 60,
                e.extracted / s.bore.depth * 14 / (ground - e.lowest_mean));
}

}  // namespace stillground::validation
