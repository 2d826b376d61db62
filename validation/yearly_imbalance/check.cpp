// Source: finite line sources on segments (Claesson & Javed 2011; Cimmino & Bernier 2014), superposed in time, by
// validation/reference_solutions/yearly_imbalance.py
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/assembly/assembly.hpp"
#include "engine/march/ambient.hpp"
#include "engine/march/state_layout.hpp"
#include "engine/simulation/make_stepper.hpp"
#include "engine/simulation/observe.hpp"
#include "validation/harness/claim.hpp"
#include "validation/harness/traces.hpp"
#include "validation/harness/worst_case.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;

namespace {

constexpr double undisturbed = 283.15, length = 120, bores = 25;  // [K], [m]
constexpr int years = 20, hours_of_month = 730;

/// The field of the reference; only ground, bores and the choice of grid and groups are used.
model::Scenario scenario() {
  model::Scenario s;
  s.ground.layers = {{std::numeric_limits<double>::infinity(), "rock", {2.0, 2.0e6}}};
  s.ground.undisturbed = model::MeanOverBore{undisturbed};
  s.bore.top = 2;
  s.bore.depth = length;
  s.bore.diameter = 0.15;
  s.bore.loop = model::SingleU{0.08};
  s.bore.pipe = {"", 0.0422, 0.00383, 0.42, 1.9e6, 0};
  s.bore.grout = {"", {1.6, 3.0e6}};
  s.layout = model::Grid{5, 5, 6};
  s.flow = {0.25e-3, model::Flow::Amount::per_bore, model::Flow::Runs::always};
  s.loads = model::ConstantGroundLoad{1};
  s.run.years = years;
  return s;
}

/// Inlet in the last hour of each month [K above the ground], by the stepper, grid, groups and clocks of a run.
std::vector<double> marched(const std::vector<double>& per_metre) {
  const assembly::Assembly assembly = assembly::assemble(scenario());
  const march::Problem& problem = assembly.problem;
  const march::FlowRegime regime{1,
                                 1000,
                                 {bore::make_network(bore::NetworkParts{.bore_resistance = 0.1,
                                                                        .internal_resistance = 1e6,
                                                                        .even_share = 0.5,
                                                                        .odd_share = 0.5,
                                                                        .grout_capacity = 1,
                                                                        .fluid_capacity = 1})},
                                 std::vector<std::size_t>(problem.nz(), 0)};
  march::Workers workers{1};
  const auto stepper = simulation::make_stepper(assembly, workers);
  march::State state = simulation::initial_state(problem, assembly.multirate);
  march::Vector wall_heat(problem.groups.size() * march::StateLayout(problem).row());
  std::vector<double> inlets;
  for (const double heat : per_metre) {
    double inlet = 0;
    for (int hour = 0; hour < hours_of_month; ++hour) {
      if (march::update_due(problem, assembly.multirate, state))
        march::update_neighbours(problem, assembly.multirate, state, workers);
      inlet = stepper->advance(state, {{0, 0, 0, heat * length * bores}, &regime}, wall_heat).lft - undisturbed;
    }
    inlets.push_back(inlet);
  }
  return inlets;
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::field);
  auto& claim = check.claim(
      {"yearly-imbalance", "a field that draws more than it gives back drifts over twenty years as line sources say",
       validation::Origin::computed,
       "finite line sources on segments with R_b and half the fluid's own rise, superposed in time: Claesson & Javed "
       "2011, Cimmino & Bernier 2014; validation/reference_solutions/yearly_imbalance.csv",
       "inlet [K above the undisturbed ground] in the last hour of each month; 5 x 5 bores at 6 m, 30 W/m drawn in "
       "January to 14 W/m given back in July, 8 W/m drawn in the mean; the stepper, grid, groups, refreshes and clocks "
       "of a run at fixed flow",
       "0.3 % of the largest change, as for fields under constant heat; the reference is within 0.03 %"});
  const auto rows = reference_solutions::read_table(REFERENCE_SOLUTIONS "/yearly_imbalance.csv");
  std::vector<double> per_metre;
  double largest = 0;
  for (const auto& row : rows) {
    per_metre.push_back(std::stod(row.at("per_metre")));
    largest = std::max(largest, std::abs(std::stod(row.at("inlet"))));
  }
  const auto ours = marched(per_metre);
  validation::WorstCase all;
  validation::Traces traces;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double reference = std::stod(rows[i].at("inlet"));
    const std::string when = fmt::format("year {}, month {}", rows[i].at("year"), rows[i].at("month"));
    all.compare_absolute(when, reference, ours[i]);
    traces.add("inlet", static_cast<double>(i + 1) / 12, reference, ours[i]);
    const bool shown = (i % 12 == 0 || i % 12 == 6) && (i < 12 || i / 12 % 5 == 4);
    if (shown) claim.absolute(when, reference, ours[i], 0.003 * largest);
  }
  all.row(claim, "all months", 0.003 * largest);
  claim.plot(traces.on({"Inlet at the ends of months", "years", "above the ground [K]", false, false, {}}));
  return check.finish();
}
