#include "engine/assembly/assembly.hpp"

#include <variant>

#include "engine/assembly/bore_groups.hpp"
#include "engine/assembly/grid_choice.hpp"
#include "engine/assembly/land.hpp"
#include "engine/field/layout.hpp"
#include "engine/ground/axial.hpp"
#include "engine/march/rates.hpp"
#include "engine/materials/fluid.hpp"

namespace stillground::assembly {

namespace {

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

Assembly uncoupled(model::Scenario scenario, const Assembly& like) {
  return uncoupled(std::move(scenario), like.sections, *like.kernels);
}

Assembly regrouped(Assembly uncoupled, field::Groups groups) {
  const auto upstream = field::in_series(uncoupled.bores.size(), uncoupled.scenario.flow.in_series);
  uncoupled.problem.groups = march_groups(uncoupled.problem.grid, uncoupled.bores, groups, upstream);
  uncoupled.groups = std::move(groups);
  return uncoupled;
}

Assembly assemble(model::Scenario scenario, const march::fused::Kernels& kernels) {
  return coupled(uncoupled(std::move(scenario), kernels));
}

Assembly assemble(model::Scenario scenario, const Assembly& like) {
  return coupled(uncoupled(std::move(scenario), like));
}

}  // namespace stillground::assembly
