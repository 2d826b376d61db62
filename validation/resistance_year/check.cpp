// Source: finite line sources on segments with the streams of each bore (Claesson & Javed 2011; Cimmino & Bernier 2014;
// Hellström 1991 for the streams [from memory]), superposed in time, by reference_solutions/segmented_field
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/job/plan.hpp"
#include "tests/march_scenario.hpp"
#include "validation/harness/claim.hpp"
#include "validation/harness/segmented_run.hpp"
#include "validation/harness/worst_case.hpp"

using namespace stillground;

namespace {

struct Site {
  std::string name;
  model::Scenario scenario;
  double length = 0;  ///< of all bores [m]
};

Site site(const std::string& name, double depth, double flow) {
  model::Scenario s = validation::six_bores(1);
  for (model::BoreSite& bore : std::get<model::Positions>(s.layout).sites) bore.depth = depth;
  s.bore.depth = depth;
  s.flow.rate = flow;
  return {name, s, 6 * depth};
}

/// The same with what `check` tells of its bores as a test's result.
model::Scenario entered(model::Scenario scenario, double& told) {
  scenario.loads = model::ConstantGroundLoad{-6000};
  told = job::check(scenario, 1).flow_cases.front().effective_resistance;
  scenario.bore.resistance = model::MeasuredResistance{told, {}, {}};
  return scenario;
}

/// Heat that jumps every hour about the months' [W/m]. Invented.
model::GroundLoads jumping(double length) {
  test::Noise noise;
  model::GroundLoads loads;
  for (const double month : validation::months_of_years(1)) {
    for (int hour = 0; hour < validation::month_hours; ++hour) {
      loads.to_ground.values.push_back((month + 30 * (noise() - 0.5)) * length);
    }
  }
  return loads;
}

double largest_difference(model::Scenario a, model::Scenario b, double length) {
  a.loads = b.loads = jumping(length);
  return test::largest_difference(test::march(a, hours_per_year), test::march(b, hours_per_year));
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::bore);
  const std::string setup =
      "six bores at 6 m, single U's; R_b* as check tells it, entered as bore.resistance; 26 W/m drawn in January to 10 "
      "W/m given back in July";
  auto& segments = check.claim(
      {"resistance-year-segments", "a year with the computed R_b* entered is what segments make of pipes and grout",
       validation::Origin::computed,
       "finite line sources on segments (Claesson & Javed 2011, ASHRAE Transactions 117(2); Cimmino & Bernier 2014, "
       "Int. J. Heat Mass Transfer 70) with both streams of every bore, R_b and R_a as pipes and grout make them; "
       "validation/reference_solutions/segmented_field.hpp",
       "fluid to and from the field [K above the undisturbed ground] in the last hour of each month of even heat; " +
           setup,
       "0.3 % of the largest change, as for other fields of segments"});
  auto& hours =
      check.claim({"resistance-year-hours", "and every hour's EFT is that of the computed resistance",
                   validation::Origin::engine, "the march itself, pipes and grout computed",
                   setup + ", and up to 15 W/m more or less from hour to hour; largest difference of a year's EFT [K]",
                   "0.05 K: half of what a test's sensors tell apart"});
  for (const Site& one : {site("100 m, 0.45 L/s", 100, 0.45e-3), site("220 m, 0.3 L/s", 220, 0.3e-3)}) {
    double told = 0;
    const model::Scenario measured = entered(one.scenario, told);
    std::vector<double> heat = validation::months_of_years(1);
    for (double& of_month : heat) of_month *= one.length;
    const auto all_flow = [](std::size_t) { return std::vector<double>(6, 1.0); };
    const auto ends = validation::by_months(measured, heat, all_flow, one.scenario);
    double largest = 0;
    validation::WorstCase lft, eft;
    for (std::size_t m = 0; m < ends.size(); ++m) {
      const std::string when = fmt::format("{}, month {}", one.name, m + 1);
      largest = std::max({largest, std::abs(ends[m].lft_reference), std::abs(ends[m].eft_reference)});
      lft.compare_absolute(when, ends[m].lft_reference, ends[m].lft);
      eft.compare_absolute(when, ends[m].eft_reference, ends[m].eft);
    }
    lft.row(segments, "LFT", 0.003 * largest);
    eft.row(segments, "EFT", 0.003 * largest);
    hours.absolute(fmt::format("{}: R_b* {:.4f}", one.name, told), 0,
                   largest_difference(measured, one.scenario, one.length), 0.05);
  }
  return check.finish();
}
