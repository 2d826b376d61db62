#include <fmt/format.h>

#include "engine/app/plan_text.hpp"

namespace stillground::app {

namespace {

std::string bore_flow(const job::BoreFlow& flow, const Figures& figures) {
  return fmt::format("{} a bore, {} in the pipe", figures.flow(flow.volume), figures.velocity(flow.velocity));
}

/// "0.50 L/s a bore", "0.30 to 0.60 L/s a bore" where flows are unequal.
std::string period_flow(const assembly::WorkPeriod& period, const Figures& figures) {
  const std::string most = figures.flow(period.most_bore);
  if (period.most_bore <= period.least_bore * (1 + 1e-9)) return most + " a bore";
  return fmt::format("{} to {} a bore", figures.flow(period.least_bore), most);
}

/// What a response test gave and what follows from it.
std::string measured(const std::optional<assembly::ResponseTest>& test, const Figures& figures) {
  if (!test) return "";
  const auto resistance = [&](double value) { return units::shown_in("K m W-1", figures.system)(value); };
  const std::string follows = test->local ? fmt::format("so bore {:.4f}, not {:.4f} as computed",
                                                        resistance(*test->local), resistance(test->computed))
                                          : "which cannot be: computed";
  return fmt::format("  measured: effective {:.4f} at {} over {}, {}\n", resistance(test->effective),
                     figures.flow(test->volume_flow), figures.length(test->tested.length, 1), follows);
}

}  // namespace

std::string plan_flow_text(const job::Plan& plan, const Figures& figures) {
  const bool one = plan.full_flow.volume <= plan.least_flow.volume * (1 + 1e-9);
  const std::string least = one ? "" : "; at least " + bore_flow(plan.least_flow, figures);
  return plan_line("flow", bore_flow(plan.full_flow, figures) + least);
}

std::string plan_phases_text(const job::Plan& plan, const Figures& figures) {
  if (plan.periods.size() < 2) return "";
  std::string text = "\nPhases: bores at work, and their full flow\n";
  for (const assembly::WorkPeriod& period : plan.periods) {
    text +=
        fmt::format("  from {}  {} {}, {}; {} in all, {}\n", iso_hour(plan.start, static_cast<double>(period.first)),
                    period.bores, period.bores == 1 ? "bore" : "bores", figures.length(period.length, 1),
                    figures.flow(period.flow), period_flow(period, figures));
  }
  return text;
}

std::string plan_resistances_text(const job::Plan& plan, const Figures& figures) {
  if (plan.flow_cases.empty()) return "";
  const auto resistance = [&](double value) { return units::shown_in("K m W-1", figures.system)(value); };
  std::string text = fmt::format("\nResistances [{}]\n  {:36}{:>10}  {:14}{:>9}{:>9}{:>11}\n", figures.unit("K m W-1"),
                                 "", "Reynolds", "flow", "bore", "internal", "effective");
  for (const auto& flow : plan.flow_cases) {
    const std::string what = fmt::format("{} {}", flow.what, figures.temperature(flow.fluid_temperature));
    text += fmt::format("  {:36}{:>10.0f}  {:14}{:>9.4f}{:>9.4f}{:>11.4f}\n", what, flow.reynolds, flow.regime,
                        resistance(flow.bore_resistance), resistance(flow.internal_resistance),
                        resistance(flow.effective_resistance));
  }
  return text + measured(plan.response_test, figures);
}

}  // namespace stillground::app
