#include "engine/job/header.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <limits>
#include <numeric>

#include <stillground/version.hpp>
#include "engine/forecast/error_estimate.hpp"
#include "engine/job/cautions.hpp"
#include "engine/job/plan_parts.hpp"

namespace stillground::job {

namespace {

const char* quantity(model::Limit::Quantity q) {
  switch (q) {
    case model::Limit::Quantity::eft:
      return "eft";
    case model::Limit::Quantity::lft:
      return "lft";
    case model::Limit::Quantity::mean_fluid:
      return "mean_fluid";
  }
  return "";
}

const char* over(model::Limit::Over o) {
  switch (o) {
    case model::Limit::Over::minute:
      return "minute";
    case model::Limit::Over::hour:
      return "hour";
    case model::Limit::Over::month:
      return "month";
  }
  return "";
}

const char* fields(model::RecordFields f) {
  switch (f) {
    case model::RecordFields::monthly:
      return "monthly";
    case model::RecordFields::yearly:
      return "yearly";
    case model::RecordFields::none:
      return "none";
  }
  return "";
}

void add_limits(const model::Scenario& scenario, record::Header& header) {
  for (const auto& limit : scenario.limits) {
    header.limits.push_back(
        {limit.name, quantity(limit.quantity), limit.side == model::Limit::Side::least, over(limit.over), limit.value});
  }
}

void add_cop_curves(const model::Scenario& scenario, record::Header& header) {
  header.has_heat_pump = scenario.heat_pump.has_value();
  if (!scenario.heat_pump) return;
  const auto add = [&](const char* duty, const std::vector<model::CopPoint>& points) {
    if (points.empty()) return;
    record::CopCurveRow& curve = header.cop_curves.emplace_back(record::CopCurveRow{duty, {}, {}});
    for (const model::CopPoint& point : points) {
      curve.eft.push_back(point.eft);
      curve.cop.push_back(point.cop);
    }
  };
  add("heating", scenario.heat_pump->heating_cop);
  add("hot_water", scenario.heat_pump->hot_water_cop);
  add("cooling", scenario.heat_pump->cooling_cop);
}

void add_grid(const ground::Grid& grid, record::Header& header) {
  header.z_faces = grid.z_faces;
  header.z = grid.z;
  header.r_faces = grid.r_faces;
  header.r = grid.r;
  for (const auto& solid : grid.solid) {
    header.conductivity.push_back(solid.conductivity);
    header.heat_capacity.push_back(solid.heat_capacity);
  }
}

void add_field(const assembly::Assembly& assembly, record::Header& header) {
  const double radius = assembly.scenario.bore.diameter / 2;
  for (std::size_t b = 0; b < assembly.bores.size(); ++b) {
    const auto& bore = assembly.bores[b];
    header.bores.push_back(
        {bore.x, bore.y, bore.top, bore.depth, radius, bore.start, static_cast<int>(assembly.groups.of_bore[b])});
  }
  if (const model::Land* land = model::land_of(assembly.scenario.layout)) {
    for (const model::PlanPoint& corner : land->outline) header.land.push_back({corner.x, corner.y});
  }
  header.groups = static_cast<int>(assembly.groups.size());
  for (const auto& group : assembly.problem.groups) {
    header.active_fraction.insert(header.active_fraction.end(), group.fraction.begin(), group.fraction.end());
    const bore::Capacities& held = assembly.fluid.capacities;
    const std::size_t passes = assembly.problem.passes;
    const auto first = held.stream.begin(), turn = first + static_cast<std::ptrdiff_t>(passes);
    header.grout_storage.push_back(held.grout);
    header.fluid_storage_down.push_back(std::accumulate(first, turn, 0.0));
    header.fluid_storage_up.push_back(std::accumulate(turn, turn + static_cast<std::ptrdiff_t>(passes), 0.0));
  }
}

/// Of a march; nobody has looked at how far a screening estimate may be off a march of the same scenario.
record::ErrorEstimate eft_error(const assembly::Assembly& assembly) {
  constexpr double unknown = std::numeric_limits<double>::quiet_NaN();
  if (assembly.scenario.run.screens()) return {unknown, unknown, unknown, unknown};
  return forecast::estimate_errors(assembly);
}

}  // namespace

std::vector<std::string> stored_lines(const std::vector<Warning>& warnings) {
  std::vector<std::string> lines;
  for (Warning warning : warnings) {
    warning.place.file = std::filesystem::path(warning.place.file).filename().string();
    lines.push_back(warning.line());
  }
  return lines;
}

record::Header make_header(const assembly::Assembly& assembly, const std::vector<Warning>& warnings) {
  const model::Scenario& scenario = assembly.scenario;
  record::Header header;
  header.title = scenario.title;
  header.scenario_text = scenario.text;
  header.engine_version = version();
  header.build = build();
  header.instruction_set = assembly.kernels->name;
  header.start = scenario.run.start;
  header.years = scenario.run.years;
  header.method = scenario.run.screens() ? "screening" : "march";
  header.step = assembly.multirate.step;
  header.eft_error = eft_error(assembly);
  header.group_error = assembly.merges() && !scenario.run.screens() ? scenario.run.group_error : 0.0;
  header.fields = fields(scenario.run.screens() ? model::RecordFields::none : scenario.fields);
  add_cop_curves(scenario, header);
  header.drill_length = assembly::drill_length(assembly);
  header.fluid_heat_capacity = assembly.fluid.heat_capacity;
  add_limits(scenario, header);
  header.warnings = stored_lines(warnings);
  header.cautions = cautions(scenario);
  header.units = scenario.units;
  for (const CatalogueValues& values : catalogue_values(scenario)) {
    header.sources.push_back(fmt::format("{}: {}. {}", values.of, values.entry, values.source));
  }
  for (const auto& input : scenario.inputs) header.inputs.emplace_back(input.name, input.sha256);
  add_grid(assembly.problem.grid, header);
  add_field(assembly, header);
  return header;
}

}  // namespace stillground::job
