#include "tools/results/decision.hpp"

#include <algorithm>
#include <cmath>

#include "tools/energy/energy.hpp"
#include "tools/results/drift.hpp"
#include "tools/results/fluid.hpp"

namespace stillground::results {

namespace {

void add_energy(const record::Header& header, std::span<const record::Hour> hours, Decision& decision) {
  if (!header.has_heat_pump) return;
  const energy::Sum sum = energy::sum_of(hours, header.cop_curves);
  decision.power = sum.power / header.years;
  decision.performance = sum.performance();
}

}  // namespace

Decision decision_of(const record::Header& header, std::span<const record::Hour> hours,
                     std::span<const record::MinuteExtremes> minutes, double drift) {
  Decision decision;
  const Spread eft = spread_of(hours, Quantity::eft);
  decision.eft_min = eft.least;
  decision.eft_max = eft.most;
  decision.limits = judge_all(header, hours, minutes);
  decision.margin = margin_of(decision.limits);
  if (const LimitOutcome* outcome = nearest(decision.limits)) decision.limit = outcome->limit.name;
  decision.first_year_beyond = first_year_beyond(decision.limits);
  if (has_limit(decision.limits, "hour")) decision.hours_beyond = periods_beyond(header, hours, false);
  decision.drift = drift;
  decision.length = header.drill_length;
  add_energy(header, hours, decision);
  decision.method = header.method;
  decision.warnings = header.warnings;
  decision.own_error = header.screening_error;
  return decision;
}

Decision decision_of(const record::read::Result& result) {
  const double drift = has_fields(result) ? drift_of(result).trend : unknown;
  return decision_of(result.header(), result.hours(), result.minutes(), drift);
}

bool kept(const Decision& decision) {
  return std::all_of(decision.limits.begin(), decision.limits.end(),
                     [](const auto& outcome) { return outcome.kept(); });
}

double error_at(const Decision& decision, const LimitOutcome& outcome) {
  const double error = outcome.by_month ? decision.own_error.month : decision.own_error.hour;
  return std::isnan(error) ? 0 : error;
}

bool is_sure(const Decision& decision) {
  bool near = false;
  for (const LimitOutcome& outcome : decision.limits) {
    const double error = error_at(decision, outcome);
    if (outcome.margin() < -error) return true;  // left, whatever the others do
    near = near || outcome.margin() < error;
  }
  return !near;
}

}  // namespace stillground::results
