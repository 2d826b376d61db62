#include "engine/run/warm_warnings.hpp"

#include <fmt/format.h>

#include "engine/materials/fluid.hpp"

namespace stillground::run {

namespace {

constexpr double ice = 273.15;
constexpr double plastic = 1;        // what conducts less is [W/(m K)]; metals conduct ten times as well
constexpr double rated = ice + 40;   // end of the table of pressure reduction, see below [K]
constexpr double near_boiling = 10;  // [K]

/// Where the fluid may begin to boil at atmospheric pressure [K]: water's boiling point, which glycols raise; of an
/// alcohol its own, below which no mixture of it boils (CRC Handbook of Chemistry and Physics [from memory]).
double boiling_point(const model::Fluid& fluid) {
  if (fluid.fraction == 0) return ice + 100;
  if (fluid.base == model::Antifreeze::ethanol) return ice + 78.3;
  if (fluid.base == model::Antifreeze::methanol) return ice + 64.6;
  return ice + 100;
}

}  // namespace

std::vector<Warning> warm_warnings(const model::Scenario& scenario, double warmest) {
  std::vector<Warning> warnings;
  const double celsius = warmest - ice;
  const materials::ValidRange known = materials::valid_range(scenario.fluid);
  if (warmest > known.warmest) {
    warnings.push_back(
        {scenario.place("fluid"),
         fmt::format("the fluid ({}) rose to {:.1f} degC", materials::fluid_name(scenario.fluid.base), celsius),
         fmt::format("its properties are known up to {:.1f} degC and held beyond", known.warmest - ice)});
  }
  if (warmest > rated && scenario.bore.pipe.conductivity < plastic) {
    warnings.push_back({scenario.place("bore.pipe"),
                        fmt::format("the fluid rose to {:.1f} degC: a polyethylene pipe bears less pressure when warm, "
                                    "and its rating gives no figure above 40 degC; ask its maker",
                                    celsius),
                        "of the rating at 20 degC, 0.87 at 30 degC and 0.74 at 40 degC: EN 12201-1, from memory"});
  }
  const double boils = boiling_point(scenario.fluid);
  if (warmest > boils - near_boiling) {
    warnings.push_back({scenario.place("fluid"),
                        fmt::format("the fluid rose to {:.1f} degC, near boiling: from {:.0f} degC on at atmospheric "
                                    "pressure, which is taken at the field's top",
                                    celsius, boils - ice),
                        "boiling is not modelled"});
  }
  return warnings;
}

}  // namespace stillground::run
