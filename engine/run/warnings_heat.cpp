#include <fmt/format.h>

#include <algorithm>

#include "engine/run/shown.hpp"
#include "engine/run/warnings_parts.hpp"

namespace stillground::run {

namespace {

constexpr double joules_per_kwh = 3.6e6;
/// Below it a field is far too large, or the loads are [W/m].
constexpr double hardly_any = 2;

struct Way {
  const GroundHeat& heat;
  double usual = 0;  ///< peak [W/m]
  const char* words;
};

void beyond_the_usual(const model::Scenario& scenario, const Way& way, std::vector<Warning>& warnings) {
  const auto usual = [&](double most, const char* units) {
    return fmt::format("usual up to {}; common practice, no source", shown(scenario, most, units, 0));
  };
  if (way.heat.peak > way.usual) {
    const std::string slip = likely_slip(way.heat.peak, way.usual);
    warnings.push_back(
        {scenario.place("loads"),
         fmt::format("at the peak {} of bore are {} the ground{}{}", shown(scenario, way.heat.peak, "W m-1", 0),
                     way.words, slip.empty() ? "" : ": ", slip),
         usual(way.usual, "W m-1")});
  }
  if (way.heat.year > usual_year) {
    warnings.push_back({scenario.place("loads"),
                        fmt::format("in a year {} of bore are {} the ground",
                                    shown(scenario, way.heat.year / joules_per_kwh, "kWh m-1", 0), way.words),
                        usual(usual_year / joules_per_kwh, "kWh m-1")});
  }
}

void below_the_usual(const model::Scenario& scenario, const GroundHeats& heats, std::vector<Warning>& warnings) {
  const double peak = std::max(heats.taken.peak, heats.given.peak);
  if (peak >= hardly_any) return;
  warnings.push_back(
      {scenario.place("loads"),
       peak == 0 ? std::string("no hour has a load: the field has nothing to do")
                 : fmt::format("the largest load is only {} of bore: are the loads in kW under a head that says W?",
                               shown(scenario, peak, "W m-1", 3)),
       fmt::format("usual from {} at the peak; common practice, no source", shown(scenario, 20, "W m-1", 0))});
}

}  // namespace

std::vector<Warning> heat_warnings(const Assembly& assembly, const GroundHeats& heats) {
  const model::Scenario& scenario = assembly.scenario;
  std::vector<Warning> warnings;
  beyond_the_usual(scenario, {heats.taken, usual_taken, "taken out of"}, warnings);
  beyond_the_usual(scenario, {heats.given, usual_given, "put into"}, warnings);
  below_the_usual(scenario, heats, warnings);
  return warnings;
}

}  // namespace stillground::run
