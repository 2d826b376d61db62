#include "tools/results/report_words.hpp"

#include <fmt/format.h>

#include <cmath>

#include "engine/units/display.hpp"
#include "tools/results/limit_view.hpp"

namespace stillground::results {

namespace {

/// The outcome that came nearest to its limit or went farthest beyond it; none if none was judged.
const LimitOutcome* tightest(const std::vector<LimitOutcome>& outcomes) {
  const LimitOutcome* found = nullptr;
  for (const LimitOutcome& outcome : outcomes) {
    if (std::isnan(outcome.margin())) continue;
    if (found == nullptr || outcome.margin() < found->margin()) found = &outcome;
  }
  return found;
}

std::string counted(const LimitOutcome& outcome) {
  const std::string unit = outcome.by_month ? "month" : outcome.by_minute ? "year" : "hour";
  return fmt::format("{} {}{}", outcome.beyond, unit, outcome.beyond == 1 ? "" : "s");
}

std::string broken_text(const LimitOutcome& outcome, const Source& source, const TemperatureScale& scale) {
  return fmt::format("{} ({}) was first left on {}, in run-year {}; it came to {}, {} in all.", outcome.limit.name,
                     scale.plain(outcome.limit.value), first_beyond_day(outcome, source.start),
                     run_year_of(*outcome.first_beyond), scale.text(outcome.closest, 2), counted(outcome));
}

}  // namespace

std::string verdict_on_limits(const FluidSummary& summary, const Source& source, UnitSystem system) {
  const TemperatureScale scale{system};
  if (summary.limits.empty()) return "The scenario sets no limits, so none is kept or left.";
  const LimitOutcome* nearest = tightest(summary.limits);
  if (nearest == nullptr) return "No limit could be judged: no hour had flow.";
  if (first_broken(summary.limits) == nullptr) {
    return fmt::format("All limits are kept for {} year{}; the nearest, {} ({}), with {} to spare.", source.years,
                       source.years == 1 ? "" : "s", nearest->limit.name, scale.plain(nearest->limit.value),
                       scale.difference(nearest->margin(), 2));
  }
  std::string text = "Limits are not kept:";
  for (const LimitOutcome& outcome : summary.limits) {
    if (!outcome.kept()) text += " " + broken_text(outcome, source, scale);
  }
  return text;
}

std::vector<std::string> error_sentences(const record::Header& header, UnitSystem system) {
  const auto kelvin = [system](double value) { return with_degree_signs(units::text(value, "K", 2, system)); };
  std::vector<std::string> sentences;
  if (std::isfinite(header.eft_error.total)) {
    sentences.push_back(
        fmt::format("Time step, cells and refresh interval may put an hour's EFT off by up to {}, as "
                    "estimated before the run.",
                    kelvin(header.eft_error.total)));
  }
  if (std::isfinite(header.screening_error.hour)) {
    sentences.push_back(
        fmt::format("The screening estimate may lie up to {} from a march in an hour, up to {} in a "
                    "month's mean, as it says itself.",
                    kelvin(header.screening_error.hour), kelvin(header.screening_error.month)));
  }
  if (header.group_error > 0) {
    sentences.push_back(fmt::format(
        "Bores with nearly alike neighbours share a ground grid; the change at their walls is bounded by {}.",
        kelvin(header.group_error)));
  }
  sentences.emplace_back(
      "What the ground, the loads, the heat pumps and the resistances really are comes on top, and is usually more.");
  return sentences;
}

std::vector<std::string> left_out() {
  return {
      "Groundwater flow, freezing of the ground, and ground that differs from place to place at one depth.",
      "Peaks of the load shorter than it is given with: hourly means hide them; the minutes named are an estimate by "
      "one circuit for all.",
      "Headers and trenches, as far as the scenario does not describe them: they exchange no heat then.",
      "Heat pumps that cycle within the hour, what they hold, and their auxiliary electricity: pumps, fans, controls."};
}

}  // namespace stillground::results
