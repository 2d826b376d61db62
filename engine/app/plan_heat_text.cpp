#include <fmt/format.h>

#include <cmath>

#include "engine/app/plan_text.hpp"

namespace stillground::app {

namespace {

/// Less is round-off of sums over the years.
constexpr double worth_telling = 1e-6;

std::string duty(const char* name, const job::LoadSummary& duty, const Figures& figures) {
  if (duty.peak <= 0) return "";
  const bool differs = std::abs(duty.first_year - duty.year) > worth_telling * duty.year;
  const std::string first = differs ? fmt::format(" ({} in the first)", figures.energy(duty.first_year)) : "";
  return plan_line(name,
                   fmt::format("{} a year{}, at most {}", figures.energy(duty.year), first, figures.power(duty.peak)));
}

std::string per_metre(const char* name, const assembly::GroundHeat& heat, const job::Plan& plan,
                      const Figures& figures) {
  if (!heat.any()) return "";
  return plan_line(
      name, fmt::format("{} at the peak, first on {}, {} between entering and leaving; {} a year",
                        figures.of(heat.peak, "W m-1", 1), iso_hour(plan.start, static_cast<double>(heat.hour)),
                        figures.difference(heat.difference, 1), figures.of(heat.year / joules_per_kwh, "kWh m-1", 1)));
}

/// By which COP the heat per metre follows from a building's loads.
std::string cop_note(const job::Plan& plan, const Figures& figures) {
  if (!std::isnan(plan.heat_to_ground)) return "";
  const assembly::GroundHeats& heats = plan.ground_heats;
  std::string at;
  for (const assembly::GroundHeat* heat : {&heats.taken, &heats.given}) {
    if (heat->any()) at += (at.empty() ? "" : " and ") + figures.temperature(heat->eft);
  }
  if (at.empty()) return "";
  return plan_line("",
                   "(heat through the wall of each metre of bore at work, the compressor's work left out or added;") +
         plan_line("", fmt::format("COP of the peaks at an EFT of {}, of the year at {})", at,
                                   figures.temperature(plan.undisturbed)));
}

}  // namespace

std::string plan_heat_text(const job::Plan& plan, const Figures& figures) {
  const std::string to_ground = std::isnan(plan.heat_to_ground) ? "follows from the EFT and the COP; the run tells"
                                                                : fmt::format("{}{} a year (positive: into the ground)",
                                                                              plan.heat_to_ground > 0 ? "+" : "",
                                                                              figures.energy(plan.heat_to_ground));
  return duty("heating", plan.heating, figures) + duty("of it hot water", plan.hot_water, figures) +
         duty("cooling", plan.cooling, figures) + plan_line("to the ground", to_ground) +
         per_metre("taken out", plan.ground_heats.taken, plan, figures) +
         per_metre("put in", plan.ground_heats.given, plan, figures) + cop_note(plan, figures);
}

}  // namespace stillground::app
