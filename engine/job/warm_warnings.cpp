#include "engine/job/warm_warnings.hpp"

#include <fmt/format.h>

#include "engine/assembly/shown.hpp"
#include "engine/base/temperature.hpp"
#include "engine/materials/fluid.hpp"

namespace stillground::job {

namespace {

constexpr double plastic = 1;                // what conducts less is [W/(m K)]; metals conduct ten times as well
constexpr double rated = zero_celsius + 40;  // end of the table of pressure reduction, see below [K]
constexpr double near_boiling = 10;          // [K]

}  // namespace

std::vector<Warning> warm_warnings(const model::Scenario& scenario, double warmest) {
  std::vector<Warning> warnings;
  const std::string rose = "the fluid rose to " + assembly::shown_temperature(scenario, warmest);
  const auto degrees = [&](double celsius) { return assembly::shown(scenario, celsius, "degC", 0); };
  const materials::ValidRange known = materials::valid_range(scenario.fluid);
  if (warmest > known.warmest) {
    warnings.push_back({scenario.place("fluid"),
                        fmt::format("{} ({})", rose, materials::fluid_name(scenario.fluid.base)),
                        fmt::format("its properties are known up to {} and held beyond",
                                    assembly::shown_temperature(scenario, known.warmest))});
  }
  if (warmest > rated && scenario.bore.pipe.conductivity < plastic) {
    warnings.push_back({scenario.place("bore.pipe"),
                        fmt::format("{}: a polyethylene pipe bears less pressure when warm, and its rating gives no "
                                    "figure above {}; ask its maker",
                                    rose, degrees(40)),
                        fmt::format("of the rating at {}, 0.87 at {} and 0.74 at {}: EN 12201-1, from memory",
                                    degrees(20), degrees(30), degrees(40))});
  }
  const double boils = materials::boiling_point(scenario.fluid);
  if (warmest > boils - near_boiling) {
    warnings.push_back(
        {scenario.place("fluid"),
         fmt::format("{}, near boiling: from {} on at atmospheric pressure, which is taken at the field's "
                     "top",
                     rose, degrees(boils - zero_celsius)),
         "boiling is not modelled"});
  }
  return warnings;
}

}  // namespace stillground::job
