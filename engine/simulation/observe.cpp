#include "engine/simulation/observe.hpp"

#include <algorithm>
#include <limits>

#include "engine/base/temperature.hpp"
#include "engine/march/ambient.hpp"
#include "engine/march/blank_state.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/state_layout.hpp"

namespace stillground::simulation {

namespace {

/// Mean temperature of grout and pipe walls: either node of the even mode has half of their capacity [K].
double mean_grout(const march::Problem& problem, const double* block, std::size_t k) {
  const march::StateLayout layout(problem);
  const std::size_t row = layout.row();
  return (block[layout.inner_row() * row + k] + block[layout.outer_row() * row + k]) / 2;
}

/// Calls each(g, k, wall temperature) for every layer with a bore in it; `regime(g)` may be null: no bore yet.
template <class RegimeOf, class Each>
void walls(const march::Problem& problem, const march::Multirate& multirate, RegimeOf&& regime_of,
           const march::State& state, Each&& each) {
  const march::StateLayout layout(problem);
  const std::size_t row = layout.row();
  std::vector<double> undisturbed(problem.nz()), ambient(row);
  problem.undisturbed.at(state.time, undisturbed);
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const march::FlowRegime* regime = regime_of(g);
    if (!regime) continue;
    march::ambient(problem, multirate, state, state.time, g, undisturbed, ambient);
    const double* block = state.y.data() + g * layout.block();
    for (std::size_t k = problem.groups[g].first; k < problem.groups[g].end; ++k) {
      const double outside = ambient[k] + block[layout.ground_row() * row + k];
      const double grout = block[layout.outer_row() * row + k];
      const double inner = regime->network(k).modes[0].outer;
      const double outer = march::wall_to_first_node(problem.grid, problem.grid.solid[k].conductivity);
      each(g, k, (grout * outer + outside * inner) / (inner + outer));
    }
  }
}

/// Heat of a bore's fluid above 0 degC, as the balance counts it: by what leaves each layer [J].
double fluid_heat(const march::Problem& problem, const march::FlowRegime& regime, const march::Group& group,
                  const double* block) {
  const march::StateLayout layout(problem);
  double sum = 0;
  for (std::size_t k = group.first; k < group.end; ++k) {
    const bore::PerStream& capacity = regime.network(k).capacity;
    double in_layer = 0;
    for (std::size_t s = 0; s < problem.streams(); ++s)
      in_layer += capacity.at(s) * (block[s * layout.row() + k] - zero_celsius);
    sum += group.fraction[k] * problem.grid.height(k) * in_layer;
  }
  return sum;
}

/// Fluid and grout of one group's bore; of several passes the mean of those that go the same way.
void add_bore(const march::Problem& problem, const march::FlowRegime& regime, double inlet, const double* block,
              std::size_t g, record::Snapshot& shot) {
  const march::StateLayout layout(problem);
  const march::Group& group = problem.groups[g];
  shot.fluid_heat[g] = fluid_heat(problem, regime, group, block);
  for (std::size_t k = group.first; k < group.end; ++k) {
    const bore::PerStream streams = march::streams_in_middle(problem, group, regime.heat_rate, inlet, block, k);
    const auto mean_from = [&](std::size_t first) {
      double sum = 0;
      for (std::size_t pass = 0; pass < problem.passes; ++pass) sum += streams.at(first + pass);
      return sum / static_cast<double>(problem.passes);
    };
    const std::size_t at = g * problem.nz() + k;
    shot.fluid_down[at] = mean_from(layout.down_row());
    shot.fluid_up[at] = mean_from(layout.up_row());
    shot.grout[at] = mean_grout(problem, block, k);
  }
}

}  // namespace

march::State initial_state(const march::Problem& problem, const march::Multirate& multirate) {
  march::State state = march::blank_state(problem, multirate);
  for (std::size_t g = 0; g < problem.groups.size(); ++g) fill_bore(problem, multirate, state, g);
  return state;
}

void fill_bore(const march::Problem& problem, const march::Multirate& multirate, march::State& state,
               std::size_t group) {
  const march::StateLayout layout(problem);
  const std::size_t row = layout.row();
  std::vector<double> undisturbed(problem.nz()), ambient(row);
  problem.undisturbed.at(state.time, undisturbed);
  march::ambient(problem, multirate, state, state.time, group, undisturbed, ambient);
  double* block = state.y.data() + group * layout.block();
  const auto from = static_cast<std::ptrdiff_t>(problem.groups[group].first);
  const auto to = static_cast<std::ptrdiff_t>(problem.groups[group].end);
  for (std::size_t which = 0; which <= layout.outer_row(); ++which) {  // streams and grout
    std::copy(ambient.begin() + from, ambient.begin() + to, block + which * row + problem.groups[group].first);
  }
}

// sum over groups of members [sum_ik rho c A_i dz_k theta_ik + sum_k f_k dz_k (C_grout T_grout + sum_s C_s T_s)],
// f: part of the layer that the bore fills, C: capacity per metre [J/(m K)].
double stored_heat(const march::Problem& problem, const assembly::LoopFluid& fluid, const march::State& state) {
  const march::StateLayout layout(problem);
  const std::size_t row = layout.row();
  double sum = 0;
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const march::Group& group = problem.groups[g];
    const double* block = state.y.data() + g * layout.block();
    double own = 0;
    for (std::size_t i = 0; i < problem.nr(); ++i) {
      const double* theta = block + (layout.ground_row() + i) * row;
      const double area = problem.grid.ring_area(i);
      for (std::size_t k = 0; k < problem.nz(); ++k) {
        own += problem.grid.solid[k].heat_capacity * area * problem.grid.height(k) * theta[k];
      }
    }
    for (std::size_t k = group.first; k < group.end; ++k) {
      double in_bore = fluid.capacities.grout * mean_grout(problem, block, k);
      for (std::size_t s = 0; s < problem.streams(); ++s) in_bore += fluid.capacities.stream.at(s) * block[s * row + k];
      own += group.fraction[k] * problem.grid.height(k) * in_bore;
    }
    sum += group.members * own;
  }
  return sum;
}

record::Snapshot snapshot(const march::Problem& problem, const march::Multirate& multirate,
                          const march::FlowRegime& standing, const march::Forcing& forcing, const march::State& state,
                          const std::vector<bool>& drilled) {
  const march::StateLayout layout(problem);
  const std::size_t row = layout.row(), nz = problem.nz(), nr = problem.nr(), groups = problem.groups.size();
  const double none = std::numeric_limits<double>::quiet_NaN();
  record::Snapshot shot;
  shot.time = state.time;
  shot.undisturbed.resize(nz);
  problem.undisturbed.at(state.time, shot.undisturbed);
  shot.rise.resize(groups * nz * nr);
  shot.wall_temperature.assign(groups * nz, none);
  shot.fluid_down = shot.fluid_up = shot.grout = shot.wall_temperature;
  shot.fluid_heat.assign(groups, none);
  const auto flow_of = [&](std::size_t g) { return forcing.of(g) ? forcing.of(g) : &standing; };
  const double inlet = march::field_inlet(problem, forcing, state.y.data());
  for (std::size_t g = 0; g < groups; ++g) {
    const double* block = state.y.data() + g * layout.block();
    for (std::size_t k = 0; k < nz; ++k) {
      for (std::size_t i = 0; i < nr; ++i) {
        shot.rise[(g * nz + k) * nr + i] = static_cast<float>(block[(layout.ground_row() + i) * row + k]);
      }
    }
    if (!drilled[g]) continue;
    add_bore(problem, *flow_of(g), march::inlet_of(problem, g, inlet, state.y.data()), block, g, shot);
  }
  walls(
      problem, multirate, [&](std::size_t g) { return drilled[g] ? flow_of(g) : nullptr; }, state,
      [&](std::size_t g, std::size_t k, double wall) { shot.wall_temperature[g * nz + k] = wall; });
  return shot;
}

WallExtremes wall_extremes(const march::Problem& problem, const march::Multirate& multirate,
                           const march::FlowRegime& regime, const march::State& state,
                           const std::vector<bool>& drilled) {
  constexpr double none = std::numeric_limits<double>::infinity();
  WallExtremes found{{none, 0, 0}, {-none, 0, 0}};
  walls(
      problem, multirate, [&](std::size_t g) { return drilled[g] ? &regime : nullptr; }, state,
      [&](std::size_t g, std::size_t k, double wall) {
        if (!(wall >= found.coldest.temperature)) found.coldest = {wall, g, k};
        if (!(wall <= found.warmest.temperature)) found.warmest = {wall, g, k};
      });
  return found;
}

double coldest_wall(const march::Problem& problem, const march::Multirate& multirate, const march::Forcing& forcing,
                    const march::State& state) {
  double coldest = std::numeric_limits<double>::infinity();
  walls(
      problem, multirate, [&](std::size_t g) { return forcing.of(g); }, state,
      [&](std::size_t, std::size_t, double wall) { coldest = std::min(coldest, wall); });
  return coldest;
}

}  // namespace stillground::simulation
