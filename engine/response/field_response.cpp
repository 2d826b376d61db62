#include "engine/response/field_response.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/march/ambient.hpp"
#include "engine/march/growing_steps.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/state_layout.hpp"
#include "engine/march/tableau.hpp"
#include "engine/march/update_stability.hpp"
#include "engine/response/operating_fraction.hpp"
#include "engine/simulation/observe.hpp"

namespace stillground::response {

namespace {

constexpr double end_cell = 2, largest_cell = 24;
constexpr double thinnest = 2;     // layer of the log [m]
constexpr double first_step = 60;  // [s]
constexpr double part = 0.04;      // a step's of the time gone by
constexpr double longest_step = 20 * seconds_per_day;
constexpr double most_steps = 30000;  // a minute or so

/// Layers thinner than `thinnest` joined to the next: conductivities and capacities side by side, as heat that leaves a
/// bore meets them.
std::vector<model::Layer> joined(const std::vector<model::Layer>& layers) {
  std::vector<model::Layer> result;
  double top = 0;     // of the layer in the making
  double within = 0;  // top of the one that is added
  model::Solid sum;   // times metres
  for (const model::Layer& layer : layers) {
    if (!std::isfinite(layer.bottom)) {
      // What is left over above the last layer is little of it.
      if (!result.empty() && within > top) result.back().bottom = within;
      result.push_back(layer);
      break;
    }
    const double height = layer.bottom - within;
    sum.conductivity += height * layer.solid.conductivity;
    sum.heat_capacity += height * layer.solid.heat_capacity;
    within = layer.bottom;
    if (within - top < thinnest) continue;
    const double total = within - top;
    result.push_back({layer.bottom, layer.material, {sum.conductivity / total, sum.heat_capacity / total}});
    top = within;
    sum = {};
  }
  return result;
}

model::Scenario step_of_heat(const assembly::Assembly& assembly) {
  model::Scenario scenario = assembly.scenario;
  scenario.ground.layers = joined(scenario.ground.layers);
  scenario.ground.undisturbed = model::MeanOverBore{assembly.fluid.reference};
  scenario.loads = model::ConstantGroundLoad{1};
  scenario.heat_pump.reset();
  scenario.flow.runs = model::Flow::Runs::always;
  scenario.flow.varies = model::Flow::Varies::never;
  scenario.run.grid = {};
  scenario.run.refresh = assembly.multirate.update_interval;
  scenario.run.grid.radial_cells = assembly.grid_spec.radial_cells;
  scenario.run.grid.outer_radius = assembly.grid_spec.outer_radius;
  scenario.run.grid.bottom_margin = assembly.grid_spec.bottom_margin;
  scenario.run.grid.end_cell = end_cell;
  scenario.run.grid.growth = 1.3;
  scenario.run.grid.largest_cell = largest_cell;
  return scenario;
}

/// Full flow for a part of the time: every resistance between fluid and wall becomes R/fraction.
march::FlowRegime between_rests(march::FlowRegime regime, double fraction) {
  for (bore::Network& network : regime.networks) {
    for (bore::Mode& mode : network.modes) {
      mode.inner /= fraction;
      mode.middle /= fraction;
      mode.outer /= fraction;
    }
  }
  return regime;
}

std::vector<double> instants(double longest, double end) {
  std::vector<double> times;
  for (double time = 0; time < end;) {
    const double step = std::clamp(part * time, first_step, longest);
    time = time + 1.5 * step >= end ? end : time + step;
    times.push_back(time);
  }
  return times;
}

/// Mean over all metres of bore of the wall's rise and of the heat through it.
Sample look(const march::Problem& problem, const march::Multirate& multirate, const march::GrowingSteps& steps) {
  const march::State& state = steps.state();
  const march::StateLayout layout(problem);
  const std::size_t row = layout.row();
  const std::vector<double> none(problem.nz(), 0.0);
  std::vector<double> neighbours(row);
  Sample sample{state.time, 0, 0};
  double length = 0;
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const march::Group& group = problem.groups[g];
    march::ambient(problem, multirate, state, state.time, g, none, neighbours);
    const double* rise = state.y.data() + g * layout.block() + layout.ground_row() * row;
    const double* heat = steps.wall_heat().data() + g * row;
    for (std::size_t k = group.first; k < group.end; ++k) {
      const double metres = group.members * group.fraction[k] * problem.grid.height(k);
      const double first = march::wall_to_first_node(problem.grid, problem.grid.solid[k].conductivity);
      sample.heat += metres * heat[k];
      sample.rise += metres * (neighbours[k] + rise[k] + heat[k] * first);
      length += metres;
    }
  }
  sample.heat /= length;
  sample.rise /= length;
  return sample;
}

/// Which layer of `grid` each layer of `finer` has its centre in.
std::vector<std::size_t> layers_within(const ground::Grid& finer, const ground::Grid& grid) {
  std::vector<std::size_t> result;
  for (const double z : finer.z) {
    const auto below = std::upper_bound(grid.z_faces.begin(), grid.z_faces.end(), z);
    const auto k = static_cast<std::size_t>(below - grid.z_faces.begin());
    result.push_back(std::clamp<std::size_t>(k, 1, grid.nz()) - 1);
  }
  return result;
}

/// Bore in each layer, all groups together [m].
std::vector<double> metres(const march::Problem& problem) {
  std::vector<double> sum(problem.nz(), 0.0);
  for (const march::Group& group : problem.groups) {
    for (std::size_t k = group.first; k < group.end; ++k) {
      sum[k] += group.members * group.fraction[k] * problem.grid.height(k);
    }
  }
  return sum;
}

/// The part of the heat that each layer of the run takes: its metres of bore times q_k, the heat per metre of the layer
/// of the march that it lies in, over the sum of all.
std::vector<double> share_heat(const march::Problem& run, const march::Problem& problem,
                               const std::vector<std::size_t>& within, const march::GrowingSteps& steps) {
  const std::size_t row = march::StateLayout(problem).row();
  std::vector<double> heat(problem.nz(), 0.0), shares = metres(run);
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const march::Group& group = problem.groups[g];
    for (std::size_t k = group.first; k < group.end; ++k) {
      heat[k] += group.members * group.fraction[k] * problem.grid.height(k) * steps.wall_heat()[g * row + k];
    }
  }
  const std::vector<double> length = metres(problem);
  double sum = 0;
  for (std::size_t k = 0; k < shares.size(); ++k) {
    const std::size_t there = within[k];
    shares[k] *= length[there] > 0 ? heat[there] / length[there] : 0;
    sum += shares[k];
  }
  for (double& share : shares) share /= sum;
  return shares;
}

/// The longest step that both carry: axial conduction, and the neighbours' sum, which is formed in every step. Close
/// bores shorten it.
double longest_of(const assembly::Assembly& run, const assembly::Assembly& assembly, const march::FlowRegime& regime) {
  const march::Problem& problem = assembly.problem;
  double longest =
      std::min(longest_step, 0.9 * march::ars222::real_stability / ground::stiffest_axial_rate(problem.grid));
  while (longest > assembly.multirate.update_interval && !march::extrapolation_is_stable(problem, regime, longest))
    longest /= 2;
  if (run.duration() > most_steps * longest) {
    throw InputError(run.scenario.place("run.method"), "run.method",
                     fmt::format("screening: bores so close answer each other within hours, and the estimate would "
                                 "take steps of {:.2g} h to the run's end; they need `method: march`",
                                 longest / seconds_per_hour));
  }
  return longest;
}

}  // namespace

FieldResponse field_response(const assembly::Assembly& run_assembly) {
  const model::Scenario scenario = step_of_heat(run_assembly);
  const assembly::Assembly assembly = assembly::assemble(scenario);
  const march::Problem& problem = assembly.problem;
  assembly::FlowRegimes regimes(scenario, assembly.fluid, problem.grid);
  const march::FlowRegime regime =
      between_rests(regimes.flowing(assembly.fluid.reference).march, operating_fraction(run_assembly));
  const march::Forcing forcing{assembly.loads.hour(0), &regime};
  march::GrowingSteps steps(problem, assembly.multirate, forcing, simulation::initial_state(problem));
  const double longest = longest_of(run_assembly, assembly, regime);
  const auto within = layers_within(run_assembly.problem.grid, problem.grid);
  FieldResponse response;
  // With steps and instants made by one rule every instant is one step.
  steps.march(
      instants(longest, assembly.duration()), first_step, longest,
      [&](double) {
        response.samples.push_back(look(problem, assembly.multirate, steps));
        response.shares.push_back(share_heat(run_assembly.problem, problem, within, steps));
      },
      part);
  return response;
}

}  // namespace stillground::response
