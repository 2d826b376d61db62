#include <stillground/check.hpp>

#include "engine/job/plan.hpp"
#include "engine/library/content.hpp"

namespace stillground {

namespace {

HeatFigures figures(const job::LoadSummary& load) {
  return {load.year, load.peak};
}

HeatFigures figures(const assembly::GroundHeat& heat) {
  return {heat.year, heat.peak};
}

/// Does not compile once Plan has another member: then `check` below fills it, too.
[[maybe_unused]] void names_every_member(const Plan& plan) {
  [[maybe_unused]] const auto& [title, start, years, screens, step, bores, groups, active_length, drill_length,
                                nearest_spacing, cells, conductivity, undisturbed, fluid_volume, grout_volume,
                                pipe_length, freezing_point, mass_flow, reynolds, bore_resistance, effective_resistance,
                                heating, cooling, taken, given, eft_error, expected_seconds, expected_bytes, warnings,
                                cautions] = plan;
}

}  // namespace

Plan check(const Scenario& scenario, int threads) {
  const job::Plan plan = job::check(scenario.content().scenario, threads);
  const job::FlowCase& full = plan.flow_cases.front();
  return {.title = plan.title,
          .start = plan.start,
          .years = plan.years,
          .screens = plan.screens,
          .step = plan.step,
          .bores = plan.bores,
          .groups = plan.groups,
          .active_length = plan.active_length,
          .drill_length = plan.drill_length,
          .nearest_spacing = plan.nearest_spacing,
          .cells = plan.cells,
          .conductivity = plan.conductivity,
          .undisturbed = plan.undisturbed,
          .fluid_volume = plan.fluid_volume,
          .grout_volume = plan.grout_volume,
          .pipe_length = plan.pipe_length,
          .freezing_point = plan.freezing_point,
          .mass_flow = plan.mass_flow,
          .reynolds = full.reynolds,
          .bore_resistance = full.bore_resistance,
          .effective_resistance = full.effective_resistance,
          .heating = figures(plan.heating),
          .cooling = figures(plan.cooling),
          .taken = figures(plan.ground_heats.taken),
          .given = figures(plan.ground_heats.given),
          .eft_error = plan.eft_error,
          .expected_seconds = plan.expected_seconds,
          .expected_bytes = plan.expected_bytes,
          .warnings = plan.warnings,
          .cautions = plan.cautions};
}

}  // namespace stillground
