#include <fmt/format.h>

#include <cmath>

#include "engine/app/duration.hpp"
#include "engine/app/plan.hpp"
#include "engine/program/notices.hpp"

namespace stillground::app {

namespace {

constexpr double joules_per_mwh = 3.6e9;

double celsius(double kelvin) {
  return kelvin - 273.15;
}

std::string line(const char* name, const std::string& text) {
  return fmt::format("  {:14}{}\n", name, text);
}

/// "1 group", "3 groups".
std::string counted(long number, const char* what) {
  return fmt::format("{} {}{}", number, what, number == 1 ? "" : "s");
}

std::string when(const run::Plan& plan) {
  const Date end{plan.start.year + plan.years, plan.start.month, plan.start.day};
  return line("time", fmt::format("{} to {}, {} in steps of {:g} min", iso(plan.start), iso(end),
                                  counted(plan.years, "year"), plan.step / 60));
}

std::string field(const run::Plan& plan) {
  const std::string apart = plan.bores > 1 ? fmt::format(", {:.2f} m apart at the nearest", plan.nearest_spacing) : "";
  return line("field", counted(plan.bores, "bore") + apart) +
         line("length", fmt::format("{:.1f} m active, {:.1f} m to drill", plan.active_length, plan.drill_length)) +
         line("ground", fmt::format("{:.2f} W/(m K) and {:.1f} degC before the start, means over the active bores",
                                    plan.conductivity, celsius(plan.undisturbed)));
}

std::string materials(const run::Plan& plan) {
  return line("fluid", fmt::format("{:.0f} L in the loops, freezes at {:.1f} degC; {:.2f} kg/s when it runs",
                                   1000 * plan.fluid_volume, celsius(plan.freezing_point), plan.mass_flow)) +
         line("pipe, grout",
              fmt::format("{:.0f} m of pipe and {:.1f} m3 of grout in the bores", plan.pipe_length, plan.grout_volume));
}

std::string duty(const char* name, double joules, double peak) {
  return joules > 0
             ? line(name, fmt::format("{:.1f} MWh a year, at most {:.1f} kW", joules / joules_per_mwh, peak / 1000))
             : "";
}

std::string heat(const run::Plan& plan) {
  const std::string to_ground =
      std::isnan(plan.heat_to_ground)
          ? "follows from the EFT and the COP; the run tells"
          : fmt::format("{:+.1f} MWh a year (positive: into the ground)", plan.heat_to_ground / joules_per_mwh);
  return duty("heating", plan.heating, plan.heating_peak) + duty("cooling", plan.cooling, plan.cooling_peak) +
         line("to the ground", to_ground);
}

std::string groups(const run::Plan& plan) {
  constexpr int many = 100;
  if (plan.group_error > 0) {
    return line("groups", fmt::format("{} of {} by the layout, merged within {:g} K at the bore walls", plan.groups,
                                      plan.equal_groups, plan.group_error));
  }
  if (plan.groups <= many) return "";
  return line("groups", fmt::format("{}; run.groups: merged joins those that are nearly alike", plan.groups));
}

std::string grid(const run::Plan& plan) {
  return line("grid", fmt::format("{} x {} along r x {} along z = {} cells; out to {:.0f} m, down to {:.0f} m",
                                  counted(plan.groups, "group"), plan.radial_cells, plan.axial_cells, plan.cells,
                                  plan.outer_radius, plan.grid_depth));
}

std::string numerics(const run::Plan& plan) {
  if (plan.screens) return line("method", "a screening estimate: hours of EFT by superposition, no fields");
  const auto& error = plan.eft_error;
  return line("numerics", fmt::format("an hour's EFT errs by at most about {:.2f} K (step {:.3f}, grid {:.3f}, refresh "
                                      "{:.3f})",
                                      error.total, error.step, error.grid, error.refresh));
}

std::string flow_table(const run::Plan& plan) {
  if (plan.flow_cases.empty()) return "";
  std::string text = fmt::format("\nResistances [K m/W]\n  {:28}{:>10}  {:14}{:>9}{:>9}{:>11}\n", "", "Reynolds",
                                 "flow", "bore", "internal", "effective");
  for (const auto& flow : plan.flow_cases) {
    text += fmt::format("  {:28}{:>10.0f}  {:14}{:>9.4f}{:>9.4f}{:>11.4f}\n", flow.what, flow.reynolds, flow.regime,
                        flow.bore_resistance, flow.internal_resistance, flow.effective_resistance);
  }
  return text;
}

program::Notices notices_of(const run::Plan& plan) {
  program::Notices notices{{}, plan.cautions};
  for (const Warning& warning : plan.warnings) notices.warnings.push_back(warning.line());
  return notices;
}

std::string cost(const run::Plan& plan, int threads) {
  const std::string disk = fmt::format("{:.0f} MB of disk", std::ceil(plan.expected_bytes / 1e6));
  if (plan.screens) return line("a run takes", disk);
  const std::string on = threads > 0 ? fmt::format("{} threads", threads) : std::string("all threads");
  return line("a run takes", fmt::format("about {} on {}, and {}", duration_text(plan.expected_seconds), on, disk));
}

}  // namespace

std::string plan_text(const run::Plan& plan, int threads) {
  return fmt::format("{}\n", plan.title) + when(plan) + field(plan) + materials(plan) + heat(plan) + groups(plan) +
         grid(plan) + numerics(plan) + cost(plan, threads) + flow_table(plan) + program::footer(notices_of(plan));
}

}  // namespace stillground::app
