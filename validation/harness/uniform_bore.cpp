#include "validation/harness/uniform_bore.hpp"

#include <limits>

#include "engine/field/groups.hpp"
#include "engine/field/superposition.hpp"
#include "engine/ground/axial.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/state_layout.hpp"
#include "engine/simulation/observe.hpp"

namespace stillground::validation {

namespace {

constexpr double heat_per_length = 50;  // [W/m]

}  // namespace

march::Problem lone_bore(const ground::GridSpec& spec, const model::Solid& solid, const ground::DepthInterval& reach,
                         std::vector<ground::DepthInterval> reaches) {
  const model::Ground ground{{{std::numeric_limits<double>::infinity(), "rock", solid}}, model::MeanOverBore{0}};
  const std::vector<model::BoreSite> bores{{0, 0, reach.top, reach.toe - reach.top, 0}};
  reaches.push_back(reach);
  const auto grid = ground::make_grid(spec, ground.layers, reaches);
  march::Group group;
  group.fraction = ground::active_fraction(grid, reach);
  while (group.fraction[group.first] == 0) ++group.first;
  group.end = group.first;
  while (group.end < grid.nz() && group.fraction[group.end] > 0) ++group.end;
  return {.grid = grid,
          .axial = ground::axial_conductances(grid),
          .groups = {group},
          .coupling = field::Coupling(bores, field::lone_groups(1), grid.r),
          .undisturbed = ground::Undisturbed(ground, grid, 0, 1),
          .pumps = {}};
}

UniformBore::UniformBore(const ground::GridSpec& spec, const model::Solid& solid, const ground::DepthInterval& reach,
                         const std::vector<ground::DepthInterval>& others)
    : problem_(lone_bore(spec, solid, reach, others)),
      regime_{1,
              1e9,
              {bore::make_network(bore::NetworkParts{.bore_resistance = 1000,
                                                     .internal_resistance = 1e6,
                                                     .even_share = 0.5,
                                                     .odd_share = 0.5,
                                                     .grout_capacity = 1e-3,
                                                     .fluid_capacity = 1e-3})},
              std::vector<std::size_t>(problem_.nz(), 0)},
      forcing_{{0, 0, 0, heat_per_length * (reach.toe - reach.top)}, &regime_},
      steps_(problem_, {}, forcing_, simulation::initial_state(problem_)) {}

void UniformBore::march(const std::vector<double>& times, double first_step, double longest_step,
                        const std::function<void(double)>& at) {
  steps_.march(times, first_step, longest_step, at);
}

double UniformBore::mean(const std::function<double(std::size_t)>& of_layer) const {
  double sum = 0, length = 0;
  for (std::size_t k = problem_.groups[0].first; k < problem_.groups[0].end; ++k) {
    const double share = problem_.groups[0].fraction[k] * problem_.grid.height(k);
    sum += share * of_layer(k);
    length += share;
  }
  return sum / length / heat_per_length;
}

double UniformBore::at_wall() const {
  return mean([&](std::size_t k) { return at_wall(k) * heat_per_length; });
}

double UniformBore::at_wall(std::size_t k) const {
  const march::StateLayout layout(problem_);
  const double first = steps_.state().y[layout.ground_row() * layout.row() + k];
  return (first +
          steps_.wall_heat()[k] * march::wall_to_first_node(problem_.grid, problem_.grid.solid[k].conductivity)) /
         heat_per_length;
}

double UniformBore::at_distance(double distance, std::size_t k) const {
  const march::StateLayout layout(problem_);
  double rise = 0;
  for (const auto& w : field::radial_weights(problem_.grid.r, distance)) {
    rise += w.weight * steps_.state().y[(layout.ground_row() + w.cell) * layout.row() + k];
  }
  return rise / heat_per_length;
}

double UniformBore::at_distance(double distance) const {
  return mean([&](std::size_t k) { return at_distance(distance, k) * heat_per_length; });
}

double UniformBore::at_distance(double distance, const ground::DepthInterval& other) const {
  const std::vector<double> fraction = ground::active_fraction(problem_.grid, other);
  double sum = 0;
  for (std::size_t k = 0; k < problem_.nz(); ++k)
    sum += fraction[k] * problem_.grid.height(k) * at_distance(distance, k);
  return sum / (other.toe - other.top);
}

}  // namespace stillground::validation
