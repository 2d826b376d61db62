#include <fmt/format.h>

#include <cmath>

#include "engine/base/temperature.hpp"
#include "engine/materials/fluid.hpp"
#include "engine/units/display.hpp"
#include "tools/scenarios/sheet_sections.hpp"

namespace stillground::scenarios {

namespace {

constexpr double usual_test = 120 * 6894.757293168;  ///< the upper end of what loop fields are often held at [Pa]
constexpr double lift = 0.3048;                      ///< of backfill [m]
constexpr double bedding = 1.5 * 0.3048;             ///< of sand round header pipes [m]

std::string litres(const SheetSource& source, double volume) {
  return source.say(1e3 * volume, "L", 0);
}

}  // namespace

SheetSection fluid_section(const SheetSource& source) {
  const model::Fluid& fluid = source.assembly.scenario.fluid;
  const CrewFigures& figures = source.figures;
  const materials::FluidParts& mix = figures.mix;
  SheetSection section{.heading = "Fill"};
  section.lines = {{"fluid", materials::fluid_name(fluid.base)},
                   {"in the loops", litres(source, figures.fluid_volume)}};
  if (mix.antifreeze_mass > 0) {
    const std::string volume = std::isfinite(mix.antifreeze_volume)
                                   ? fmt::format(", {} before mixing", litres(source, mix.antifreeze_volume))
                                   : "";
    section.lines.insert(
        section.lines.end(),
        {{"antifreeze", source.say(mix.antifreeze_mass, "kg", 0) + volume},
         {"water", fmt::format("{}, {} before mixing", source.say(mix.mass - mix.antifreeze_mass, "kg", 0),
                               litres(source, mix.water_volume))},
         {"by mass", fmt::format("{:.1f} %", 100 * mix.antifreeze_mass / mix.mass)}});
  }
  section.lines.push_back({"freezes at", source.say(figures.freezing_point - zero_celsius, "degC", 1)});
  section.lines.push_back({"filled to, at a gauge on the surface", source.pressure(source.allowances.fill), practice});
  section.notes = {
      "At 15 degC, loops alone: header, building and what is spilled come on top. Mix before filling, and "
      "measure the freezing point of what comes back."};
  section.grids = {{.columns = {{"freezing point read", false, 20}, {"at", false, 10}, {"by", false, 14}},
                    .rows = std::vector<std::vector<std::string>>(2, std::vector<std::string>(3))}};
  return section;
}

SheetSection test_section(const SheetSource& source) {
  const CrewFigures& figures = source.figures;
  SheetSection section{.heading = "Pressure test, with water"};
  section.lines = {{"water column down to the deepest toe", source.pressure(figures.water_column)},
                   {"fluid column there, and the filling",
                    fmt::format("{} + {}", source.pressure(figures.column), source.pressure(source.allowances.fill))},
                   {"gauge on the surface, at least", source.pressure(figures.test_least),
                    "1.5 times the filling: common practice, no source"},
                   {"held without a visible leak", "30 minutes",
                    "published: a design standard of the US Northwest, 2005, sec. 1.8.4"},
                   {"often held before backfill", "110 to 120 psi (7.6 to 8.3 bar) for 24 h", practice}};
  SheetGrid limits{.columns = {{"printed on the pipe"},
                               {"ratio", true},
                               {"rated to", true},
                               {"stands at the toe", true},
                               {"gauge, at most", true}}};
  bool over = false, narrow = false, oversteps = false;
  for (const PipeLimits& of : figures.pipe_limits) {
    const double standing = figures.column + source.allowances.fill;
    over = over || standing > of.rating;
    narrow = narrow || of.test_most < figures.test_least;
    oversteps = oversteps || of.test_most < usual_test;
    limits.rows.push_back({of.material, fmt::format("{:.3g}", figures.ratio), source.pressure(of.rating),
                           source.pressure(standing), of.test_most > 0 ? source.pressure(of.test_most) : "none"});
  }
  section.notes = {
      "What is printed on the pipe decides which line holds; a pipe of another make goes by its maker's "
      "word, and joints and fittings may be weaker. At most 1.5 times the rating at the lowest point (ASTM "
      "F2164, from memory). Rated by 2 S/(ratio - 1) at 20 to 23 degC; a line that lies in the sun is "
      "weaker. The gauge falls for hours without a leak, by creep and as the water cools or warms."};
  if (over)
    section.notes.emplace_back(
        "Filled, the pipe of at least one line stands above its rating at the toe; only grout and groundwater hold "
        "against it from outside. Ask whoever answers for the design.");
  if (oversteps)
    section.notes.emplace_back("The 110 to 120 psi that are often used overstep at least one line of this table.");
  if (narrow)
    section.notes.emplace_back(
        "For at least one line no pressure is both enough and allowed: test the loops before they go down, or as the "
        "local rule says.");
  SheetGrid readings{
      .columns = {
          {"read after"}, {"gauge", false, 12}, {"water, air", false, 12}, {"clock", false, 8}, {"by", false, 14}}};
  for (const char* after : {"start", "15 min", "30 min", "1 h", "24 h"})
    readings.rows.push_back({after, "", "", "", ""});
  section.grids = {limits, readings};
  return section;
}

SheetSection trench_section(const SheetSource& source) {
  const double depth = source.figures.trench;
  SheetSection section{.heading = "Trench"};
  if (depth <= 0) {
    section.notes = {"The scenario has no trench: the bores begin at the surface."};
    return section;
  }
  const double above = std::max(0.0, depth - bedding);
  section.lines = {
      {"floor below the surface", source.say(depth, "m", 2)},
      {"usual", fmt::format("{}, below frost", source.say(6 * 0.3048, "m", 2)), practice},
      {"not shallower than", source.say(48 * 0.0254, "m", 2),
       "published: Unified Facilities Guide Specification 15741N, sec. 3.3.2"},
      {"sand round the pipes", source.say(bedding, "m", 2), practice},
      {"at least", source.say(6 * 0.0254, "m", 2),
       "published, for horizontal loops: a design standard of the US Northwest, 2005, sec. 2.1.2", true},
      {"backfill above it, compacted",
       fmt::format("{:.0f} lifts of at most {}", std::ceil(above / lift - 1e-9), source.say(lift, "m", 2)), practice}};
  section.notes = {
      "Backfilled after the pressure test, the line under pressure. Nobody enters a trench that is deeper than local "
      "rules allow unshored."};
  return section;
}

}  // namespace stillground::scenarios
