#include "tools/scenarios/sheet_sections.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/units/display.hpp"
#include "tools/scenarios/plan_words.hpp"

namespace stillground::scenarios {

std::string SheetSource::say(double kept, const char* kind, int digits) const {
  return units::text(kept, kind, digits, system);
}

std::string SheetSource::pressure(double pascals) const {
  const std::string bar = units::text(pascals / 1e5, "bar", 1, UnitSystem::si);
  const std::string psi = units::text(pascals / 1e5, "bar", 0, UnitSystem::us);
  return system == UnitSystem::us ? fmt::format("{} ({})", psi, bar) : fmt::format("{} ({})", bar, psi);
}

SheetSection drilling_section(const SheetSource& source) {
  const auto& bores = source.assembly.bores;
  const auto any = [&](auto has) { return std::any_of(bores.begin(), bores.end(), has); };
  const bool named = any([](const model::BoreSite& bore) { return !bore.name.empty(); });
  const bool later = any([](const model::BoreSite& bore) { return bore.start > 0; });
  const units::Shown metres = units::shown_in("m", source.system);
  const std::string unit = fmt::format(" [{}]", metres.units);
  const auto length = [&](double kept, int digits) { return fixed(metres(kept), digits); };
  SheetGrid grid;
  grid.columns = {{"no.", true}};
  if (named) grid.columns.push_back({"name"});
  grid.columns.insert(grid.columns.end(), {{"x" + unit, true}, {"y" + unit, true}, {"drill to" + unit, true}});
  if (later) grid.columns.push_back({"works from"});
  grid.columns.insert(grid.columns.end(), {{"drilled to", false, 10}, {"loop tested", false, 11}, {"grout", false, 8}});
  for (const model::BoreSite& bore : bores) {
    auto& row = grid.rows.emplace_back();
    row.push_back(fmt::format("{}", grid.rows.size()));
    if (named) row.push_back(bore.name.empty() ? "-" : bore.name);
    row.insert(row.end(), {length(bore.x, 2), length(bore.y, 2), length(bore.top + bore.depth, 1)});
    if (later) row.push_back(bore.start > 0 ? date_of(source.assembly.scenario.run, bore.start) : "the start");
    row.resize(grid.columns.size());
  }
  return {.heading = "Drill",
          .lines = {{"bores", count_text(bores.size())},
                    {"to drill in all", source.say(source.figures.drill_length, "m", 0)},
                    {"bore diameter", source.say(1e3 * source.assembly.scenario.bore.diameter, "mm", 1)}},
          .notes = {"Depths are counted from the surface to the toe. Keep the driller's log of each bore: the design "
                    "rests on the ground being as assumed."},
          .grids = {grid}};
}

SheetSection pipe_section(const SheetSource& source) {
  SheetSection section{.heading = "Loops"};
  for (const PipeAmount& pipe : source.figures.pipes) {
    const std::string size = fmt::format("{} x {}", source.say(1e3 * pipe.pipe.outer_diameter, "mm", 2),
                                         source.say(1e3 * pipe.pipe.wall, "mm", 2));
    section.lines.push_back(
        {pipe.what + ", outside x wall", pipe.pipe.name.empty() ? size : size + ", " + pipe.pipe.name});
    section.lines.push_back({"in the bores, from the trench down",
                             fmt::format("{} ({} a bore)", source.say(pipe.in_bores, "m", 0),
                                         pipe.legs == 1 ? "one length" : fmt::format("{} legs", pipe.legs)),
                             "", true});
    section.lines.push_back({"to order, up to the surface", source.say(pipe.to_surface, "m", 0), "", true});
  }
  section.lines.push_back(
      {"longest leg, surface to toe", source.say(source.figures.pipes.front().longest_leg, "m", 1)});
  section.notes = {
      "Ends stay capped and stand above the surface until the trench is dug. Pipes stay full of water and closed while "
      "grout is fresh, so that its weight does not press them flat.",
      "Headers and the pipes of the building are not counted here."};
  return section;
}

SheetSection grout_section(const SheetSource& source) {
  const CrewFigures& figures = source.figures;
  const model::Grout& grout = source.assembly.scenario.bore.grout;
  const bool us = source.system == UnitSystem::us;
  const bool by_bag = source.allowances.bag > 0;
  const auto bag_count = [&](double volume) { return fmt::format("{}", bags(volume, source.allowances)); };
  SheetSection section{.heading = "Grout"};
  section.lines = {{"mix", grout.name.empty() ? "as the scenario gives it" : grout.name},
                   {"conductivity, as set", source.say(grout.solid.conductivity, "W m-1 K-1", 2)},
                   {"bores less pipes", source.say(figures.grout_net, "m3", us ? 0 : 1)},
                   {"to order",
                    fmt::format("{}, {:.3g} % waste counted", source.say(figures.grout, "m3", us ? 0 : 1),
                                100 * source.allowances.grout_waste),
                    practice},
                   {"permeability of the set grout", "at most 1e-7 cm/s (1e-9 m/s)",
                    "published: construction specification of North Olmsted, Ohio, by US EPA advice"}};
  if (by_bag) {
    section.lines.push_back(
        {"bags in all, each making " + source.say(1e3 * source.allowances.bag, "L", 1), bag_count(figures.grout)});
  }
  SheetGrid grid{.columns = {{"bores", true}, {"drill to", true}, {"grout a bore", true}}};
  if (by_bag) grid.columns.push_back({"bags a bore", true});
  grid.columns.push_back({"batch and density", false, 18});
  for (const LoopKind& kind : figures.kinds) {
    auto& row = grid.rows.emplace_back();
    row = {fmt::format("{}", kind.count), source.say(kind.toe, "m", 1), source.say(kind.grout, "m3", us ? 0 : 2)};
    if (by_bag) row.push_back(bag_count(kind.grout));
    row.resize(grid.columns.size());
  }
  section.grids = {grid};
  section.notes = {
      "Pumped from the toe upwards through a tremie pipe until it comes up to the trench as thick as it went down."};
  return section;
}

SheetSection flushing_section(const SheetSource& source) {
  const Flushing& flushing = source.figures.flushing;
  const bool us = source.system == UnitSystem::us;
  constexpr const char* guide =
      "published: Unified Facilities Guide Specification 15741N; a design standard of the US Northwest, 2005, sec. "
      "1.8.7";
  const std::string column = source.say(flushing.head / 9806.65, "m", 1);
  return {.heading = "Flush",
          .lines = {{"velocity, in the slowest pipe", "at least " + source.say(flushing.velocity, "m s-1", 2), guide},
                    {"flow through each bore", source.say(1e3 * flushing.flow, "L s-1", us ? 1 : 3)},
                    {"head of the longest bore at that",
                     fmt::format("{}, or {} of water", source.say(flushing.head / 1e3, "kPa", 0), column)},
                    {"kept after the last air", "15 minutes", guide}},
          .notes = {"Bores that are flushed at once need as many times that flow, and the pump the header's and the "
                    "hoses' head besides. Water at 5 degC."},
          .grids = {{.columns = {{"flushed together", false, 16},
                                 {"from", false, 8},
                                 {"last air", false, 8},
                                 {"to", false, 8},
                                 {"flow read", false, 10},
                                 {"by", false, 10}},
                     .rows = std::vector<std::vector<std::string>>(3, std::vector<std::string>(6))}}};
}

SheetSection signature_section() {
  SheetGrid grid{.columns = {{"for"}, {"name", false, 22}, {"date", false, 10}, {"signature", false, 26}}};
  for (const char* who : {"drilling", "loops and grout", "flushing and test", "whoever answers for the design"}) {
    grid.rows.push_back({who, "", "", ""});
  }
  return {.heading = "Signed", .grids = {grid}};
}

}  // namespace stillground::scenarios
