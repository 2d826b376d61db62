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
#include "engine/response/pieces.hpp"
#include "engine/simulation/observe.hpp"

namespace stillground::response {

namespace {

constexpr double end_cell = 0.5, largest_cell = 24;
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
  scenario.run.groups = model::Run::Groups::none;  // the run's are put in their place
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

/// Flow for a part of the time, so much of it that the fluid has one temperature at all depths: what it loses on its
/// way is the circuit's affair. Every resistance between fluid and wall becomes R/fraction.
march::FlowRegime between_rests(march::FlowRegime regime, double fraction) {
  constexpr double even = 100;
  regime.heat_rate *= even;
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

/// Reads every piece's mean heat and rise off a march.
class Reader {
 public:
  Reader(const march::Problem& problem, const march::Multirate& multirate, std::span<const double> parts)
      : problem_(problem),
        multirate_(multirate),
        layout_(problem),
        none_(problem.nz(), 0.0),
        neighbours_(layout_.row()) {
    for (const march::Group& group : problem.groups) metres_.push_back(metres_of_pieces(group, problem.grid, parts));
  }

  void look(const march::GrowingSteps& steps, FieldResponse& response) {
    std::vector<double> length(response.size(), 0.0);
    for (auto& samples : response) samples.push_back({steps.state().time, 0, 0});
    for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
      const march::Group& group = problem_.groups[g];
      const march::State& state = steps.state();
      march::ambient(problem_, multirate_, state, state.time, g, none_, neighbours_);
      const double* rise = state.y.data() + g * layout_.block() + layout_.ground_row() * layout_.row();
      const double* heat = steps.wall_heat().data() + g * layout_.row();
      for (std::size_t k = group.first; k < group.end; ++k) {
        const double first = march::wall_to_first_node(problem_.grid, problem_.grid.solid[k].conductivity);
        const double wall = neighbours_[k] + rise[k] + heat[k] * first;
        for (std::size_t piece = 0; piece < response.size(); ++piece) {
          const double metres = group.members * metres_[g][piece][k];
          response[piece].back().heat += metres * heat[k];
          response[piece].back().rise += metres * wall;
          length[piece] += metres;
        }
      }
    }
    for (std::size_t piece = 0; piece < response.size(); ++piece) {
      response[piece].back().heat /= length[piece];
      response[piece].back().rise /= length[piece];
    }
  }

 private:
  const march::Problem& problem_;
  const march::Multirate& multirate_;
  march::StateLayout layout_;
  std::vector<std::vector<std::vector<double>>> metres_;  // [group][piece][z]
  std::vector<double> none_, neighbours_;                 // [z]
};

/// The longest step that the neighbours' sum bears, which is formed in every one. Close bores shorten it.
double longest_of(const assembly::Assembly& run, const assembly::Assembly& assembly, const march::FlowRegime& regime) {
  double longest = longest_step;
  while (longest > assembly.multirate.update_interval &&
         !march::extrapolation_is_stable(assembly.problem, regime, longest))
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

FieldResponse field_response(const assembly::Assembly& run_assembly, std::span<const double> parts) {
  const model::Scenario scenario = step_of_heat(run_assembly);
  const assembly::Assembly assembly =
      assembly::coupled(assembly::regrouped(assembly::uncoupled(scenario), run_assembly.groups));
  const march::Problem& problem = assembly.problem;
  assembly::FlowRegimes regimes(scenario, assembly.fluid, problem.grid);
  const march::FlowRegime regime =
      between_rests(regimes.flowing(assembly.fluid.reference).march, operating_fraction(run_assembly));
  const march::Forcing forcing{assembly.loads.hour(0), &regime};
  march::GrowingSteps steps(problem, assembly.multirate, forcing, simulation::initial_state(problem),
                            march::GrowingSteps::Axial::by_factors);
  const double longest = longest_of(run_assembly, assembly, regime);
  Reader reader(problem, assembly.multirate, parts);
  FieldResponse response(parts.size());
  // With steps and instants made by one rule every instant is one step.
  steps.march(
      instants(longest, assembly.duration()), first_step, longest, [&](double) { reader.look(steps, response); }, part);
  return response;
}

}  // namespace stillground::response
