#include "tools/scenarios/sheet.hpp"

#include <fmt/format.h>

#include <stillground/version.hpp>
#include "engine/base/temperature.hpp"
#include "tools/scenarios/plan.hpp"
#include "tools/scenarios/plan_words.hpp"
#include "tools/scenarios/sheet_sections.hpp"

namespace stillground::scenarios {

namespace {

std::string origin_of(const model::Scenario& scenario) {
  std::string text = fmt::format("stillground {}, from {}", version(), scenario.file);
  if (!scenario.inputs.empty()) text += fmt::format(" (sha256 {})", scenario.inputs.front().sha256.substr(0, 16));
  return text;
}

present::Json pipes_json(const CrewFigures& figures) {
  present::Json pipes = present::Json::array();
  for (const PipeAmount& pipe : figures.pipes) {
    pipes.push_back({{"what", pipe.what},
                     {"name", pipe.pipe.name},
                     {"outer_diameter", present::quantity(1e3 * pipe.pipe.outer_diameter, "mm")},
                     {"wall", present::quantity(1e3 * pipe.pipe.wall, "mm")},
                     {"legs", pipe.legs},
                     {"length", present::quantity(pipe.in_bores, "m")},
                     {"length_to_surface", present::quantity(pipe.to_surface, "m")}});
  }
  return pipes;
}

present::Json limits_json(const CrewFigures& figures) {
  present::Json limits = present::Json::array();
  for (const PipeLimits& of : figures.pipe_limits) {
    limits.push_back({{"material", of.material},
                      {"pressure_rating", present::quantity(of.rating / 1e5, "bar")},
                      {"test_pressure_most", present::quantity(of.test_most / 1e5, "bar")},
                      {"source", of.source}});
  }
  return limits;
}

}  // namespace

Sheet sheet(const assembly::Assembly& assembly, const Allowances& allowances, UnitSystem system) {
  const CrewFigures figures = crew_figures(assembly, allowances);
  const SheetSource source{assembly, figures, allowances, system};
  return {.title = assembly.scenario.title,
          .sums = sums_sentence(plan_sums(assembly), system),
          .notices = plan_notices(assembly),
          .sections = {drilling_section(source), pipe_section(source), grout_section(source), flushing_section(source),
                       test_section(source), fluid_section(source), trench_section(source), signature_section()},
          .plan = present::svg(site_plan(assembly, {.units = system, .footnotes = {}})),
          .origin = origin_of(assembly.scenario)};
}

present::Json sheet_json(const assembly::Assembly& assembly, const Allowances& allowances) {
  const CrewFigures figures = crew_figures(assembly, allowances);
  present::Json json;
  json["title"] = assembly.scenario.title;
  json["bores"] = assembly.bores.size();
  json["length"] = present::quantity(figures.drill_length, "m");
  json["deepest"] = present::quantity(figures.deepest, "m");
  json["pipes"] = pipes_json(figures);
  json["grout"] = {{"net", present::quantity(figures.grout_net, "m3")},
                   {"waste", present::number(allowances.grout_waste)},
                   {"order", present::quantity(figures.grout, "m3")}};
  if (allowances.bag > 0) json["grout"]["bags"] = bags(figures.grout, allowances);
  json["volume"] = present::quantity(1e3 * figures.fluid_volume, "L");
  json["antifreeze"] = {{"mass", present::quantity(figures.mix.antifreeze_mass, "kg")},
                        {"volume", present::quantity(1e3 * figures.mix.antifreeze_volume, "L")}};
  json["water"] = {{"mass", present::quantity(figures.mix.mass - figures.mix.antifreeze_mass, "kg")},
                   {"volume", present::quantity(1e3 * figures.mix.water_volume, "L")}};
  json["freezing_point"] = present::quantity(figures.freezing_point - zero_celsius, "degC");
  json["flushing_velocity"] = present::quantity(figures.flushing.velocity, "m s-1");
  json["flushing_flow"] = present::quantity(1e3 * figures.flushing.flow, "L s-1");
  json["flushing_head"] = present::quantity(figures.flushing.head / 1e3, "kPa");
  json["fill"] = present::quantity(allowances.fill / 1e5, "bar");
  json["pressure_lowest"] = present::quantity((figures.column + allowances.fill) / 1e5, "bar");
  json["test_pressure_least"] = present::quantity(figures.test_least / 1e5, "bar");
  json["pipe_materials"] = limits_json(figures);
  json["trench"] = present::quantity(figures.trench, "m");
  json["positions"] = present::columns(plan_table(assembly));
  return json;
}

}  // namespace stillground::scenarios
