#include <fmt/format.h>

#include <algorithm>

#include "engine/assembly/shown.hpp"
#include "engine/job/warnings_parts.hpp"

namespace stillground::job {

namespace {

constexpr double joules_per_kwh = 3.6e6;
/// Below it a field is far too large, or the loads are [W/m].
constexpr double hardly_any = 2;

struct Way {
  const assembly::GroundHeat& heat;
  double usual = 0;  ///< peak [W/m]
  const char* words;
};

void beyond_the_usual(const model::Scenario& scenario, const Way& way, std::vector<Warning>& warnings) {
  const auto usual = [&](double most, const char* units) {
    return fmt::format("usual up to {}; common practice, no source", assembly::shown(scenario, most, units, 0));
  };
  if (way.heat.peak > way.usual) {
    const std::string slip = assembly::likely_slip(way.heat.peak, way.usual);
    warnings.push_back(
        {scenario.place("loads"),
         fmt::format("at the peak {} of bore are {} the ground{}{}",
                     assembly::shown(scenario, way.heat.peak, "W m-1", 0), way.words, slip.empty() ? "" : ": ", slip),
         usual(way.usual, "W m-1")});
  }
  if (way.heat.year > assembly::usual_year) {
    warnings.push_back({scenario.place("loads"),
                        fmt::format("in a year {} of bore are {} the ground",
                                    assembly::shown(scenario, way.heat.year / joules_per_kwh, "kWh m-1", 0), way.words),
                        usual(assembly::usual_year / joules_per_kwh, "kWh m-1")});
  }
}

void below_the_usual(const model::Scenario& scenario, const assembly::GroundHeats& heats,
                     std::vector<Warning>& warnings) {
  const double peak = std::max(heats.taken.peak, heats.given.peak);
  if (peak >= hardly_any) return;
  warnings.push_back(
      {scenario.place("loads"),
       peak == 0 ? std::string("no hour has a load: the field has nothing to do")
                 : fmt::format("the largest load is only {} of bore: are the loads in kW under a head that says W?",
                               assembly::shown(scenario, peak, "W m-1", 3)),
       fmt::format("usual from {} at the peak; common practice, no source",
                   assembly::shown(scenario, 20, "W m-1", 0))});
}

}  // namespace

std::vector<Warning> heat_warnings(const assembly::Assembly& assembly, const assembly::GroundHeats& heats) {
  const model::Scenario& scenario = assembly.scenario;
  std::vector<Warning> warnings;
  beyond_the_usual(scenario, {heats.taken, assembly::usual_taken, "taken out of"}, warnings);
  beyond_the_usual(scenario, {heats.given, assembly::usual_given, "put into"}, warnings);
  below_the_usual(scenario, heats, warnings);
  return warnings;
}

}  // namespace stillground::job
