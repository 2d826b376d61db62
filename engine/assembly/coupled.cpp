#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/assembly/assembly.hpp"
#include "engine/assembly/grid_choice.hpp"
#include "engine/assembly/likely_causes.hpp"
#include "engine/assembly/shown.hpp"
#include "engine/field/layout.hpp"
#include "engine/loop/circuits.hpp"
#include "engine/march/bore_elimination.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/rates.hpp"
#include "engine/march/tableau.hpp"
#include "engine/march/update_stability.hpp"
#include "engine/materials/fluid.hpp"

// What can be settled only once the groups hang together: how long the neighbours' sum may be carried on, and whether
// the heat pumps' curves can be met.
namespace stillground::assembly {

namespace {

/// Half of it, in whole days from two days on, then in whole hours; 0 below an hour.
double next_shorter(double refresh) {
  const double whole = refresh > 1.5 * seconds_per_day ? seconds_per_day : seconds_per_hour;
  return whole * std::floor(refresh / whole / 2 + 1e-9);
}

double nearest_two(const std::vector<model::BoreSite>& bores) {
  const auto nearest = field::nearest_distances(bores);
  return *std::min_element(nearest.begin(), nearest.end());
}

/// The longest update interval, not longer than asked for, over which the neighbours' sum may be extrapolated: half and
/// half again. The slow modes depend on it.
void settle_update_interval(Assembly& assembly) {
  const model::Scenario& scenario = assembly.scenario;
  if (assembly.bores.size() < 2) return;
  FlowRegimes regimes(scenario, assembly.fluid, assembly.problem.grid, assembly.sections);
  // Warm fluid is thin: the least film that occurs.
  const march::FlowRegime& regime = regimes.flowing(materials::valid_range(scenario.fluid).warmest).march;
  double refresh = scenario.run.refresh;
  while (refresh > 0 && !march::extrapolation_is_stable(assembly.problem, regime, refresh))
    refresh = next_shorter(refresh);
  if (refresh == scenario.run.refresh) return;
  const std::string apart = shown(scenario, nearest_two(assembly.bores), "m", 3);
  if (refresh == 0) {
    throw InputError(scenario.place("field"), "field",
                     fmt::format("bores {} apart answer each other within the hour, and the march cannot follow: "
                                 "place them farther apart",
                                 apart));
  }
  assembly.multirate.update_interval = refresh;
  assembly.multirate.slow = choose_slow_modes(scenario.run, assembly.problem.grid, refresh);
  assembly.warnings.push_back(
      {scenario.place(scenario.places.contains("run.refresh") ? "run.refresh" : "field"),
       fmt::format("bores {} apart answer each other soon: what they do to each other is looked at every {:g} h "
                   "instead of every {:g} h (run.refresh), or the march would be unstable",
                   apart, refresh / seconds_per_hour, scenario.run.refresh / seconds_per_hour),
       ""});
}

/// The field's gain within a stage: how much of a change at the inlet comes back at the outlet.
double stage_gain(const Assembly& assembly, const march::FlowRegime& regime) {
  const march::Problem& problem = assembly.problem;
  const double kappa = march::ars222::gamma * assembly.multirate.step;
  const march::RadialFactors radial(problem, kappa);
  std::vector<double> gains;
  for (const march::Group& group : problem.groups) {
    gains.push_back(march::BoreElimination(problem, group, regime, radial, kappa).gain());
  }
  loop::Circuits circuits({problem.groups.begin(), problem.groups.end()});
  circuits.set_gains(gains, std::vector<double>(gains.size(), regime.heat_rate));
  return circuits.set_offsets(std::vector<double>(gains.size(), 0.0)).gain;
}

/// Field and heat pump meet in one point as long as the rejected heat does not rise faster with EFT than the field can
/// carry it off within a stage: Q' gain < m c (1 - gain). At short steps hardly anything comes back within a stage and
/// the gain may be a shade below zero (a leg's warmth reaches the other through the grout): no slope is too steep then.
void check_cop_slopes(const Assembly& assembly) {
  const model::Scenario& scenario = assembly.scenario;
  const double rise = loop::steepest_rise(assembly.problem.pumps, assembly.loads.cooling_peak());
  if (rise == 0) return;
  FlowRegimes regimes(scenario, assembly.fluid, assembly.problem.grid, assembly.sections);
  const march::FlowRegime& regime = regimes.flowing(assembly.fluid.reference).march;
  const double gain = stage_gain(assembly, regime);
  const march::Forcing forcing{{}, &regime};
  const double carried = march::heat_rate(assembly.problem, forcing) * (1 - gain);
  if (rise * gain >= carried) {
    const std::string remedy = loads_beyond_usual(assembly)
                                   ? "the curve may be right and the loads too large; " + likely_causes(assembly)
                                   : "give a flatter curve, more flow or more bores";
    throw InputError(
        scenario.place("heat_pump.cooling_cop"), "heat_pump.cooling_cop",
        fmt::format("falls so steeply that at the peak load the rejected heat would rise by {:.0f} W per K of EFT, "
                    "while the field carries off {:.0f} W per K; {}",
                    rise, carried / gain, remedy));
  }
}

}  // namespace

Assembly coupled(Assembly assembly) {
  assembly.problem.coupling = field::Coupling(assembly.bores, assembly.groups, assembly.problem.grid.r);
  settle_update_interval(assembly);
  check_cop_slopes(assembly);
  return assembly;
}

}  // namespace stillground::assembly
