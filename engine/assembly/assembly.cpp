#include "engine/assembly/assembly.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <variant>

#include "engine/assembly/land.hpp"
#include "engine/assembly/likely_causes.hpp"
#include "engine/assembly/shown.hpp"
#include "engine/bore/loop_type.hpp"
#include "engine/field/layout.hpp"
#include "engine/ground/axial.hpp"
#include "engine/march/bore_elimination.hpp"
#include "engine/march/multirate.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/rates.hpp"
#include "engine/march/tableau.hpp"
#include "engine/march/update_stability.hpp"
#include "engine/materials/fluid.hpp"

namespace stillground::assembly {

namespace {

constexpr std::size_t most_bores = 10000;

ground::GridSpec choose_grid(const model::Scenario& scenario, const std::vector<model::BoreSite>& bores) {
  const model::GridChoice& choice = scenario.run.grid;
  const bool fine = choice.level == model::GridChoice::Level::fine;
  double alpha = 0;
  for (const auto& layer : scenario.ground.layers) alpha = std::max(alpha, layer.solid.diffusivity());
  const double reach = std::sqrt(4 * alpha * scenario.run.years * seconds_per_year);
  const auto chosen = [](double own, double otherwise) { return own > 0 ? own : otherwise; };

  ground::GridSpec spec;
  spec.bore_radius = scenario.bore.diameter / 2;
  spec.outer_radius = chosen(choice.outer_radius, std::max(300.0, field::radius(bores) + 4 * reach));
  const double rings = std::log(spec.outer_radius / spec.bore_radius) / std::log(ring_ratio) * (fine ? 2 : 1);
  spec.radial_cells = choice.radial_cells > 0 ? choice.radial_cells : static_cast<int>(std::ceil(rings));
  spec.end_cell = chosen(choice.end_cell, fine ? 0.25 : 0.5);
  spec.growth = chosen(choice.growth, fine ? 1.15 : 1.2);
  spec.largest_cell = chosen(choice.largest_cell, fine ? 4.0 : 8.0);
  spec.bottom_margin = chosen(choice.bottom_margin, std::max(60.0, 3 * reach));
  return spec;
}

/// The layout's bores; only a plot of land can turn out to hold none, or too many.
std::vector<model::BoreSite> bores_of(const model::Scenario& scenario) {
  auto bores = field::sites(scenario.layout, scenario.bore.top, scenario.bore.depth);
  if (bores.empty()) {
    throw InputError(scenario.place("field.plot"), "field.plot",
                     "no bore fits on the plot with these setbacks; is the outline in metres, its corners in order?");
  }
  if (bores.size() > most_bores) {
    throw InputError(
        scenario.place("field.plot"), "field.plot",
        fmt::format("the plot holds {} bores (allowed: up to {}); give a wider spacing", bores.size(), most_bores));
  }
  return bores;
}

ground::DepthInterval reach_of(const model::BoreSite& bore) {
  return {bore.top, bore.top + bore.depth};
}

std::vector<march::Group> march_groups(const ground::Grid& grid, const std::vector<model::BoreSite>& bores,
                                       const field::Groups& groups, const field::Upstream& upstream) {
  std::vector<march::Group> result;
  for (const auto& members : groups.members) {
    const std::size_t bore = members.front();
    march::Group group;
    group.fraction = ground::active_fraction(grid, reach_of(bores[bore]));
    group.members = static_cast<double>(members.size());
    const auto active = [](double fraction) { return fraction > 1e-9; };
    const auto first = std::find_if(group.fraction.begin(), group.fraction.end(), active);
    const auto last = std::find_if(group.fraction.rbegin(), group.fraction.rend(), active).base();
    group.first = static_cast<std::size_t>(first - group.fraction.begin());
    group.end = static_cast<std::size_t>(last - group.fraction.begin());
    if (upstream[bore] != field::no_bore) group.upstream = groups.of_bore[upstream[bore]];
    group.returns = std::find(upstream.begin(), upstream.end(), bore) == upstream.end();
    result.push_back(std::move(group));
  }
  return result;
}

/// Every circuit has as many bores; they are there as long as each other and carry the same flow.
void check_circuits(const model::Scenario& scenario, const std::vector<model::BoreSite>& bores,
                    const field::Upstream& upstream) {
  if (bores.size() % static_cast<std::size_t>(scenario.flow.in_series) != 0) {
    throw InputError(scenario.place("flow.in_series"), "flow.in_series",
                     fmt::format("{} bores do not make circuits of {}: one would be shorter than the others",
                                 bores.size(), scenario.flow.in_series));
  }
  for (std::size_t i = 0; i < bores.size(); ++i) {
    if (upstream[i] == field::no_bore) continue;
    const model::BoreSite &bore = bores[i], &before = bores[upstream[i]];
    if (bore.start == before.start && bore.stop == before.stop && bore.flow_weight == before.flow_weight) continue;
    throw InputError(
        scenario.place("flow.in_series"), "flow.in_series",
        fmt::format("bores {} and {} are on one circuit but differ in start, stop or flow", upstream[i] + 1, i + 1));
  }
}

/// In series each bore's inlet is another's outlet: bores with equal neighbours are not alike.
void check_merging(const model::Scenario& scenario) {
  if (scenario.run.groups == model::Run::Groups::merged && scenario.flow.in_series > 1) {
    throw InputError(scenario.place("run.groups"), "run.groups",
                     "merged: bores in series cannot be merged (allowed here: symmetry, none)");
  }
}

/// Sum of the circuits' flow weights.
double circuit_weights(const std::vector<model::BoreSite>& bores, const field::Upstream& upstream) {
  double sum = 0;
  for (std::size_t i = 0; i < bores.size(); ++i) sum += upstream[i] == field::no_bore ? bores[i].flow_weight : 0.0;
  return sum;
}

loop::HeatPumps heat_pumps(const model::Scenario& scenario) {
  loop::HeatPumps pumps;
  if (!scenario.heat_pump) return pumps;
  if (!scenario.heat_pump->heating_cop.empty()) pumps.heating.emplace(scenario.heat_pump->heating_cop);
  if (!scenario.heat_pump->hot_water_cop.empty()) pumps.hot_water.emplace(scenario.heat_pump->hot_water_cop);
  if (!scenario.heat_pump->cooling_cop.empty()) pumps.cooling.emplace(scenario.heat_pump->cooling_cop);
  return pumps;
}

double surface_film(const model::Scenario& scenario) {
  const auto* surface = std::get_if<model::SeasonalSurface>(&scenario.ground.undisturbed);
  return surface ? surface->surface_film : 0.0;
}

/// The longest step that divides an hour, is not longer than asked for, and that the explicit axial conduction bears.
double stable_step(const model::Scenario& scenario, const ground::Grid& grid, std::vector<Warning>& warnings) {
  const double longest = march::ars222::real_stability / ground::stiffest_axial_rate(grid);
  double step = scenario.run.step;
  for (int parts = static_cast<int>(std::lround(seconds_per_hour / step)); step > longest;
       step = seconds_per_hour / ++parts) {
  }
  if (step < 1) {
    throw InputError(scenario.place("ground.layers"), "ground.layers",
                     "a layer is too thin to be marched (it would need steps below a second); join it to a neighbour");
  }
  if (step < scenario.run.step) {
    warnings.push_back(
        {scenario.place("run.step"),
         fmt::format("the thinnest layer needs steps of {:g} s instead of {:g} s", step, scenario.run.step), ""});
  }
  return step;
}

/// Two rates where the user leaves the choice to us: the reference knows one, and a neighbours' sum that is formed
/// within the day would see the slow rings stand still.
march::SlowModes choose_slow_modes(const model::Run& run, const ground::Grid& grid, double refresh) {
  const bool one = run.clocks == model::Run::Clocks::one || run.stepper == model::Run::Stepper::reference;
  if (one || std::fmod(refresh, seconds_per_day) != 0) return {};
  return march::choose_slow_modes(grid, ground::stiffest_axial_rate(grid));
}

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

Assembly uncoupled(model::Scenario scenario, std::shared_ptr<SolvedSections> sections,
                   const march::fused::Kernels& kernels) {
  materials::mass_fraction(scenario.fluid, scenario.place("fluid"));  // refused here, where its place is known
  auto bores = bores_of(scenario);
  const field::Upstream upstream = field::in_series(bores.size(), scenario.flow.in_series);
  check_circuits(scenario, bores, upstream);
  check_merging(scenario);
  auto groups = scenario.run.groups == model::Run::Groups::none ? field::lone_groups(bores.size())
                                                                : field::equal_groups(bores, upstream);
  const std::size_t equal = groups.size();
  std::vector<ground::DepthInterval> reaches;
  for (const auto& bore : bores) reaches.push_back(reach_of(bore));
  const ground::GridSpec spec = choose_grid(scenario, bores);
  const ground::Grid grid = ground::make_grid(spec, scenario.ground.layers, reaches);

  std::vector<Warning> warnings = land_warnings(scenario);
  const double film = surface_film(scenario);
  const double step = stable_step(scenario, grid, warnings);
  const double duration = scenario.run.years * seconds_per_year;
  const double start = hour_of_year(scenario.run.start) * seconds_per_hour;
  march::Problem problem{.grid = grid,
                         .axial = ground::axial_conductances(grid, film),
                         .groups = march_groups(grid, bores, groups, upstream),
                         .coupling = {},  // by coupled()
                         .undisturbed = ground::Undisturbed(scenario.ground, grid, start, duration),
                         .pumps = heat_pumps(scenario),
                         .passes = bore::loop_type(scenario.bore.loop).passes(scenario.bore.loop)};
  const march::Multirate multirate{.step = step,
                                   .update_interval = scenario.run.refresh,
                                   .slow = choose_slow_modes(scenario.run, grid, scenario.run.refresh)};
  const double reference = mean_over_bores(problem, problem.undisturbed.yearly_mean());
  LoopFluid fluid = loop_fluid(scenario, circuit_weights(bores, upstream), reference);
  const auto test = response_test(scenario, fluid, mean_solid(problem));
  if (test) fluid.bore_resistance = test->local;
  loop::LoadSeries loads(scenario.loads, hour_of_year(scenario.run.start));
  return {.scenario = std::move(scenario),
          .bores = std::move(bores),
          .groups = std::move(groups),
          .equal_groups = equal,
          .grid_spec = spec,
          .problem = std::move(problem),
          .multirate = multirate,
          .loads = std::move(loads),
          .fluid = fluid,
          .surface_film = film,
          .warnings = std::move(warnings),
          .sections = std::move(sections),
          .response_test = test,
          .kernels = &kernels};
}

}  // namespace

bool Assembly::merges() const {
  return scenario.run.groups == model::Run::Groups::merged;
}

double Assembly::duration() const {
  return scenario.run.years * seconds_per_year;
}

long Assembly::hours() const {
  return static_cast<long>(scenario.run.years) * hours_per_year;
}

double mean_over_bores(const march::Problem& problem, const std::vector<double>& per_layer) {
  double sum = 0, length = 0;
  for (const march::Group& group : problem.groups) {
    for (std::size_t k = group.first; k < group.end; ++k) {
      const double share = group.members * group.fraction[k] * problem.grid.height(k);
      sum += share * per_layer[k];
      length += share;
    }
  }
  return sum / length;
}

model::Solid mean_solid(const march::Problem& problem) {
  std::vector<double> conductivity, heat_capacity;
  for (const model::Solid& solid : problem.grid.solid) {
    conductivity.push_back(solid.conductivity);
    heat_capacity.push_back(solid.heat_capacity);
  }
  return {mean_over_bores(problem, conductivity), mean_over_bores(problem, heat_capacity)};
}

double drill_length(const Assembly& assembly) {
  double sum = 0;
  for (const auto& bore : assembly.bores) {
    sum += bore.depth + (assembly.scenario.bore.drilled_from_trench ? 0.0 : bore.top);
  }
  return sum;
}

Assembly uncoupled(model::Scenario scenario, const march::fused::Kernels& kernels) {
  return uncoupled(std::move(scenario), std::make_shared<SolvedSections>(), kernels);
}

Assembly regrouped(Assembly uncoupled, field::Groups groups) {
  const auto upstream = field::in_series(uncoupled.bores.size(), uncoupled.scenario.flow.in_series);
  uncoupled.problem.groups = march_groups(uncoupled.problem.grid, uncoupled.bores, groups, upstream);
  uncoupled.groups = std::move(groups);
  return uncoupled;
}

Assembly coupled(Assembly assembly) {
  assembly.problem.coupling = field::Coupling(assembly.bores, assembly.groups, assembly.problem.grid.r);
  settle_update_interval(assembly);
  check_cop_slopes(assembly);
  return assembly;
}

Assembly assemble(model::Scenario scenario, const march::fused::Kernels& kernels) {
  return coupled(uncoupled(std::move(scenario), kernels));
}

Assembly assemble(model::Scenario scenario, const Assembly& like) {
  return coupled(uncoupled(std::move(scenario), like.sections, *like.kernels));
}

}  // namespace stillground::assembly
