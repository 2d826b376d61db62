#include "engine/response/single_bore.hpp"

#include <algorithm>
#include <limits>
#include <variant>

#include "engine/assembly/median_bore.hpp"
#include "engine/field/superposition.hpp"
#include "engine/march/growing_steps.hpp"
#include "engine/march/state_layout.hpp"
#include "engine/march/tableau.hpp"
#include "engine/simulation/observe.hpp"
#include "engine/simulation/simulation.hpp"

namespace stillground::response {

namespace {

model::GridChoice outright(const ground::GridSpec& spec) {
  model::GridChoice choice;
  choice.radial_cells = spec.radial_cells;
  choice.end_cell = spec.end_cell;
  choice.growth = spec.growth;
  choice.largest_cell = spec.largest_cell;
  choice.outer_radius = spec.outer_radius;
  choice.bottom_margin = spec.bottom_margin;
  return choice;
}

/// The share of `bores` in the scenario's demand, hour by hour.
model::Loads share_of_loads(const assembly::Assembly& assembly, int of_bores, long first_hour, long hours,
                            int hour_of_year) {
  model::BuildingLoads building;
  model::GroundLoads ground;
  const double bores = static_cast<double>(assembly.bores.size()) / of_bores;
  for (long hour = first_hour; hour < first_hour + hours; ++hour) {
    const loop::Demand demand = assembly.loads.hour(hour);
    building.heating.values.push_back(demand.heating / bores);
    building.hot_water.values.push_back(demand.hot_water / bores);
    building.cooling.values.push_back(demand.cooling / bores);
    building.cooling_direct.values.push_back(demand.cooling_direct / bores);
    ground.to_ground.values.push_back(demand.to_ground / bores);
  }
  for (auto* series :
       {&building.heating, &building.hot_water, &building.cooling, &building.cooling_direct, &ground.to_ground}) {
    series->first_hour = hour_of_year;
  }
  if (std::holds_alternative<model::BuildingLoads>(assembly.scenario.loads)) return building;
  return ground;
}

}  // namespace

model::Scenario refined(const assembly::Assembly& assembly, const Refinement& by) {
  model::Scenario scenario = assembly.scenario;
  scenario.run.grid = outright(ground::refined(assembly.grid_spec, by.rings, by.layers));
  scenario.run.step = assembly.multirate.step / by.steps;
  scenario.run.refresh = assembly.multirate.update_interval;
  return scenario;
}

model::Scenario lone_bore_on_day(const assembly::Assembly& assembly, const Refinement& by, long day, long hours) {
  model::Scenario lone = refined(assembly, by);
  const model::BoreSite& like = assembly::median_bore(assembly.bores);
  lone.layout = model::Positions{{{0, 0, like.top, like.depth, 0}}};
  lone.flow.rate = assembly.fluid.flow_per_bore / assembly.fluid.density;
  lone.flow.amount = model::Flow::Amount::per_bore;
  lone.flow.in_series = 1;
  lone.run.start = plus_days(lone.run.start, day);
  lone.run.years = 1;
  lone.loads = share_of_loads(assembly, 1, day * 24, hours, hour_of_year(lone.run.start));
  lone.fields = model::RecordFields::none;
  return lone;
}

model::Scenario lone_circuit(const assembly::Assembly& assembly, int years) {
  const int bores = assembly.scenario.flow.in_series;
  model::Scenario lone = lone_bore_on_day(assembly, {}, 0, 0);
  if (bores > 1) lone.layout = model::Positions{{assembly.bores.begin(), assembly.bores.begin() + bores}};
  lone.flow.in_series = bores;
  lone.run.years = years;
  lone.loads = share_of_loads(assembly, bores, 0, hours_per_year, hour_of_year(lone.run.start));
  return lone;
}

model::Scenario lone_bore(const assembly::Assembly& assembly, const Refinement& by) {
  model::Scenario lone = lone_bore_on_day(assembly, by, 0, 0);
  lone.ground.undisturbed = model::MeanOverBore{assembly.fluid.reference};
  lone.loads = model::ConstantGroundLoad{1};
  lone.heat_pump.reset();
  lone.flow.runs = model::Flow::Runs::always;
  lone.flow.varies = model::Flow::Varies::never;
  return lone;
}

model::Scenario plain_lone_bore(const assembly::Assembly& assembly, const Refinement& by) {
  model::Scenario lone = lone_bore(assembly, by);
  lone.ground.layers = {{std::numeric_limits<double>::infinity(), "mean", assembly::mean_solid(assembly.problem)}};
  return lone;
}

std::vector<double> hourly_rise(const assembly::Assembly& lone, long hours) {
  simulation::Simulation simulation(lone, 1);
  std::vector<double> rise;
  for (long hour = 0; hour < hours; ++hour) rise.push_back(simulation.march_hour().eft - lone.fluid.reference);
  return rise;
}

LongTimeRise long_time_rise(const assembly::Assembly& lone, const std::vector<double>& times,
                            const std::vector<double>& distances) {
  constexpr double first_step = 300;  // [s]
  constexpr double part = 0.05;       // steps of a twentieth of the time gone by: grids are compared at equal steps
  const march::Problem& problem = lone.problem;
  assembly::FlowRegimes regimes(lone.scenario, lone.fluid, problem.grid, lone.sections);
  const march::Forcing forcing{lone.loads.hour(0), &regimes.flowing(lone.fluid.reference).march};
  march::GrowingSteps steps(problem, lone.multirate, forcing, simulation::initial_state(problem));

  const march::StateLayout layout(problem);
  const auto ground_at = [&](double distance) {
    std::vector<double> rise(problem.nz(), 0.0);
    for (const auto& w : field::radial_weights(problem.grid.r, distance)) {
      const double* theta = steps.state().y.data() + (layout.ground_row() + w.cell) * layout.row();
      for (std::size_t k = 0; k < rise.size(); ++k) rise[k] += w.weight * theta[k];
    }
    return assembly::mean_over_bores(problem, rise);
  };
  LongTimeRise late;
  const double longest = 0.9 * march::ars222::real_stability / ground::stiffest_axial_rate(problem.grid);
  steps.march(
      times, first_step, longest,
      [&](double) {
        late.fluid.push_back(steps.operating_point().eft - lone.fluid.reference);
        std::vector<double>& at = late.at_distance.emplace_back();
        for (const double distance : distances) at.push_back(ground_at(distance));
      },
      part);
  return late;
}

}  // namespace stillground::response
