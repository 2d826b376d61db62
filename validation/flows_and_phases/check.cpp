// Source: finite line sources on segments with the streams of each bore (Claesson & Javed 2011; Cimmino & Bernier 2014;
// Hellström 1991 for the streams [from memory]), superposed in time, by reference_solutions/segmented_field
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "validation/harness/claim.hpp"
#include "validation/harness/segmented_run.hpp"
#include "validation/harness/traces.hpp"
#include "validation/harness/worst_case.hpp"

using namespace stillground;
using validation::FlowParts;

namespace {

constexpr int years = 4;
constexpr double field_length = 600;  // [m]

std::vector<double> heat() {
  std::vector<double> months;
  for (const double per_metre : validation::months_of_years(years)) months.push_back(per_metre * field_length);
  return months;
}

model::BoreSite& bore(model::Scenario& s, std::size_t n) {
  return std::get<model::Positions>(s.layout).sites[n];
}

/// One field through all months.
void compare(validation::Claim& claim, validation::Traces& traces, const std::string& name,
             const model::Scenario& scenario, const FlowParts& parts) {
  const auto ends = validation::by_months(scenario, heat(), parts, scenario);
  double largest = 0;
  for (const auto& end : ends) largest = std::max({largest, std::abs(end.lft_reference), std::abs(end.eft_reference)});
  validation::WorstCase lft, eft, flow, share;
  const double mean = std::abs(heat().front()) / 6;
  for (std::size_t m = 0; m < ends.size(); ++m) {
    const std::string when = fmt::format("{}, year {}, month {}", name, m / 12 + 1, m % 12 + 1);
    lft.compare_absolute(when, ends[m].lft_reference, ends[m].lft);
    eft.compare_absolute(when, ends[m].eft_reference, ends[m].eft);
    flow.compare(when, ends[m].flow_reference, ends[m].flow);
    for (std::size_t b = 0; b < ends[m].heat.size(); ++b) {
      share.compare_absolute(fmt::format("bore {} of {}", b + 1, when), ends[m].heat_reference[b] / mean,
                             ends[m].heat[b] / mean);
    }
    traces.add(name, static_cast<double>(m + 1) / 12, ends[m].eft_reference, ends[m].eft);
  }
  lft.row(claim, "LFT", 0.003 * largest);
  eft.row(claim, "EFT", 0.003 * largest);
  share.row(claim, "a bore's heat over January's mean", 0.005);
  flow.row(claim, "flow [kg/s]", 1e-9);
}

validation::Heading heading(const std::string& id, const std::string& what, const std::string& setup) {
  return {
      id,
      what,
      validation::Origin::computed,
      "finite line sources on segments (Claesson & Javed 2011, ASHRAE Transactions 117(2); Cimmino & Bernier 2014, "
      "Int. J. Heat Mass Transfer 70) with both streams of every bore, superposed in time; "
      "validation/reference_solutions/segmented_field.hpp",
      "fluid to and from the field [K above the undisturbed ground] in the last hour of each of 48 months of even "
      "heat, 26 W/m drawn in January to 10 W/m given back in July; six bores of 100 m at 6 m, single U's; R_b and "
      "R_a of a run at each bore's flow; " +
          setup,
      "0.3 % of the largest change and 0.005 of a bore's heat, as for other fields of segments; the flow to round-off"};
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::field);
  validation::Traces traces;

  auto& unequal = check.claim(heading("unequal-flows", "bores with unequal flows share the heat as segments say",
                                      "flow weights 2, 1, 0.5, 1, 0.7 and 1.5"));
  {
    const std::vector<double> weights = {2, 1, 0.5, 1, 0.7, 1.5};
    model::Scenario s = validation::six_bores(years);
    for (std::size_t b = 0; b < weights.size(); ++b) bore(s, b).flow_weight = weights[b];
    compare(unequal, traces, "weights", s, [&](std::size_t) { return weights; });
  }

  auto& phases = check.claim(heading(
      "phases-and-shut-off", "bores that begin later and bores that are shut off leave the field as segments say",
      "one of them begins after 12 months, one after 18, one is shut off after 30; a flow that divides among "
      "those at work, and one that is given for each"));
  for (const auto amount : {model::Flow::Amount::total, model::Flow::Amount::per_bore}) {
    const bool divides = amount == model::Flow::Amount::total;
    constexpr std::size_t second = 12, third = 18, shut = 30;  // months
    const double month = validation::month_hours * 3600.0;
    model::Scenario s = validation::six_bores(years);
    s.flow.amount = amount;
    if (divides) s.flow.rate *= 6;
    bore(s, 1).start = second * month;
    bore(s, 5).start = third * month;
    bore(s, 3).stop = shut * month;
    compare(phases, traces, divides ? "phases, divided" : "phases, each", s, [&](std::size_t m) {
      std::vector<double> parts(6, 1.0);
      if (m < second) parts[1] = 0;
      if (m < third) parts[5] = 0;
      if (m >= shut) parts[3] = 0;
      const double at_work = static_cast<double>(std::count(parts.begin(), parts.end(), 1.0));
      for (double& part : parts) part *= divides ? 6 / at_work : 1;
      return parts;
    });
  }

  auto& variable = check.claim(heading("variable-flow", "a flow that follows the load leaves the field as segments say",
                                       "in proportion to the load, 40 % at least, and in three stages"));
  const auto months = heat();
  const auto part_of_peak = [&](std::size_t m) { return std::abs(months[m] / months[0]); };
  {
    model::Scenario s = validation::six_bores(years);
    s.flow.varies = model::Flow::Varies::with_load;
    s.flow.least = 0.4;
    compare(variable, traces, "in proportion", s,
            [&](std::size_t m) { return std::vector<double>(6, std::max(0.4, part_of_peak(m))); });
    s.flow.varies = model::Flow::Varies::in_stages;
    s.flow.stages = 3;
    compare(variable, traces, "in stages", s,
            [&](std::size_t m) { return std::vector<double>(6, std::ceil(3 * part_of_peak(m) - 1e-12) / 3); });
  }
  variable.plot(traces.on({"EFT at the ends of months", "years", "above the ground [K]", false, false, {}}));
  return check.finish();
}
