#include "engine/app/plan_text.hpp"

#include <fmt/format.h>

#include <cmath>

#include "engine/app/plan.hpp"
#include "engine/base/paragraph.hpp"
#include "engine/program/duration.hpp"
#include "engine/program/notices.hpp"

namespace stillground::app {

namespace {

/// "1 group", "3 groups".
std::string counted(long number, const char* what) {
  return fmt::format("{} {}{}", number, what, number == 1 ? "" : "s");
}

std::string when(const job::Plan& plan) {
  const Date end{plan.start.year + plan.years, plan.start.month, plan.start.day};
  return plan_line("time", fmt::format("{} to {}, {} in steps of {:g} min", iso(plan.start), iso(end),
                                       counted(plan.years, "year"), plan.step / 60));
}

std::string field(const job::Plan& plan, const Figures& figures) {
  const std::string apart =
      plan.bores > 1 ? fmt::format(", {} apart at the nearest", figures.length(plan.nearest_spacing, 2)) : "";
  return plan_line("field", counted(plan.bores, "bore") + apart) +
         plan_line("length", fmt::format("{} active, {} to drill", figures.length(plan.active_length, 1),
                                         figures.length(plan.drill_length, 1))) +
         plan_line("ground",
                   fmt::format("{} and {} before the start, means over the active bores",
                               figures.of(plan.conductivity, "W m-1 K-1", 2), figures.temperature(plan.undisturbed)));
}

std::string materials(const job::Plan& plan, const Figures& figures) {
  return plan_line(
             "fluid",
             fmt::format("{} in the loops, freezes at {}; {} when it runs", figures.of(1e3 * plan.fluid_volume, "L", 0),
                         figures.temperature(plan.freezing_point), figures.of(plan.mass_flow, "kg s-1", 2))) +
         plan_flow_text(plan, figures) +
         plan_line("pipe, grout",
                   fmt::format("{} of pipe and {} of grout in the bores", figures.length(plan.pipe_length, 0),
                               figures.of(plan.grout_volume, "m3", 1)));
}

std::string groups(const job::Plan& plan, const Figures& figures) {
  constexpr int many = 100;
  if (plan.group_error > 0) {
    return plan_line("groups", fmt::format("{} of {} by the layout, merged within {} at the bore walls", plan.groups,
                                           plan.equal_groups, figures.difference(plan.group_error, 3)));
  }
  if (plan.groups <= many) return "";
  return plan_line("groups", fmt::format("{}; run.groups: merged joins those that are nearly alike", plan.groups));
}

std::string grid(const job::Plan& plan, const Figures& figures) {
  return plan_line("grid", fmt::format("{} x {} along r x {} along z = {} cells; out to {}, down to {}",
                                       counted(plan.groups, "group"), plan.radial_cells, plan.axial_cells, plan.cells,
                                       figures.length(plan.outer_radius, 0), figures.length(plan.grid_depth, 0)));
}

std::string numerics(const job::Plan& plan, const Figures& figures) {
  if (plan.screens) {
    return plan_line("method", "a screening estimate: hours of EFT by superposition, no fields");
  }
  const auto& error = plan.eft_error;
  return plan_line("numerics", fmt::format("step, grid and refresh alone: an hour's EFT errs by at most about {} (step "
                                           "{}, grid {}, refresh {});",
                                           figures.difference(error.total, 2), figures.difference(error.step, 3),
                                           figures.difference(error.grid, 3), figures.difference(error.refresh, 3))) +
         plan_line("", "errors of the model and of what the scenario gives come on top");
}

std::string sources(const job::Plan& plan) {
  if (plan.sources.empty()) return "";
  std::string text = "\nValues from the catalogues, no measurements\n";
  bool ground = false;
  for (const auto& values : plan.sources) {
    text += "  " + wrapped(fmt::format("{} ({}): {}", values.of, values.entry, values.source), 98, "    ") + "\n";
    ground = ground || values.of.starts_with("ground");
  }
  if (ground) text += "  Verify the ground's values by a thermal response test.\n";
  return text;
}

program::Notices notices_of(const job::Plan& plan) {
  program::Notices notices{{}, plan.cautions};
  for (const Warning& warning : plan.warnings) notices.warnings.push_back(warning.line());
  return notices;
}

std::string cost(const job::Plan& plan, int threads) {
  const std::string disk = fmt::format("{:.0f} MB of disk", std::ceil(plan.expected_bytes / 1e6));
  if (plan.screens) return plan_line("a run takes", disk);
  const std::string on = threads > 0 ? fmt::format("{} threads", threads) : std::string("all threads");
  return plan_line("a run takes",
                   fmt::format("about {} on {}, and {}", program::duration_text(plan.expected_seconds), on, disk));
}

}  // namespace

std::string plan_line(const char* name, const std::string& text) {
  return fmt::format("  {:16}{}\n", name, text);
}

std::string plan_text(const job::Plan& plan, int threads) {
  const Figures figures{plan.units};
  return fmt::format("{}\n", plan.title) + when(plan) + field(plan, figures) + materials(plan, figures) +
         plan_heat_text(plan, figures) + groups(plan, figures) + grid(plan, figures) + numerics(plan, figures) +
         cost(plan, threads) + plan_phases_text(plan, figures) + plan_resistances_text(plan, figures) + sources(plan) +
         program::footer(notices_of(plan));
}

}  // namespace stillground::app
