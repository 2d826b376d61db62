#include "engine/run/observe.hpp"

#include <algorithm>
#include <limits>

#include "engine/march/ambient.hpp"
#include "engine/march/radial.hpp"

namespace stillground::run {

namespace {

/// Mean temperature of grout and pipe walls: either even node has half of their capacity [K].
double mean_grout(const march::Problem& problem, const double* block, std::size_t k) {
  const std::size_t row = problem.row();
  return (block[march::rows::even_inner * row + k] + block[march::rows::even_outer * row + k]) / 2;
}

/// Calls each(g, k, wall temperature) for every layer with a bore in it.
template <class Each>
void walls(const march::Problem& problem, const march::FlowRegime& regime, const march::State& state, Each&& each) {
  const std::size_t row = problem.row();
  std::vector<double> undisturbed(problem.nz()), ambient(row);
  problem.undisturbed.at(state.time, undisturbed);
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    march::ambient(problem, state, state.time, g, undisturbed, ambient);
    const double* block = state.y.data() + g * problem.block();
    for (std::size_t k = problem.groups[g].first; k < problem.groups[g].past; ++k) {
      const double outside = ambient[k] + block[march::rows::ground * row + k];
      const double grout = block[march::rows::even_outer * row + k];
      const double inner = regime.networks[k].even.outer;
      const double outer = march::wall_to_first_node(problem.grid, problem.grid.solid[k].conductivity);
      each(g, k, (grout * outer + outside * inner) / (inner + outer));
    }
  }
}

}  // namespace

march::State initial_state(const march::Problem& problem) {
  march::State state;
  const std::size_t row = problem.row();
  state.y.assign(problem.size(), 0.0);
  state.neighbours.assign(problem.groups.size() * row, 0.0);
  state.neighbours_before = state.neighbours;
  std::vector<double> undisturbed(problem.nz());
  problem.undisturbed.at(0, undisturbed);
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    double* block = state.y.data() + g * problem.block();
    for (const std::size_t which :
         {march::rows::down, march::rows::up, march::rows::even_inner, march::rows::even_outer}) {
      const auto from = static_cast<std::ptrdiff_t>(problem.groups[g].first);
      const auto to = static_cast<std::ptrdiff_t>(problem.groups[g].past);
      std::copy(undisturbed.begin() + from, undisturbed.begin() + to, block + which * row + problem.groups[g].first);
    }
  }
  return state;
}

double stored_heat(const march::Problem& problem, const LoopFluid& fluid, const march::State& state) {
  const std::size_t row = problem.row();
  double sum = 0;
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const march::Group& group = problem.groups[g];
    const double* block = state.y.data() + g * problem.block();
    double own = 0;
    for (std::size_t i = 0; i < problem.nr(); ++i) {
      const double* theta = block + (march::rows::ground + i) * row;
      const double area = problem.grid.ring_area(i);
      for (std::size_t k = 0; k < problem.nz(); ++k) {
        own += problem.grid.solid[k].heat_capacity * area * problem.grid.height(k) * theta[k];
      }
    }
    for (std::size_t k = group.first; k < group.past; ++k) {
      const double streams = block[march::rows::down * row + k] + block[march::rows::up * row + k];
      own += group.fraction[k] * problem.grid.height(k) *
             (fluid.grout_per_metre * mean_grout(problem, block, k) + fluid.storage_per_metre * streams);
    }
    sum += group.members * own;
  }
  return sum;
}

record::Snapshot snapshot(const march::Problem& problem, const march::FlowRegime& regime, const march::State& state) {
  const std::size_t row = problem.row(), nz = problem.nz(), nr = problem.nr(), groups = problem.groups.size();
  const double none = std::numeric_limits<double>::quiet_NaN();
  record::Snapshot shot;
  shot.time = state.time;
  shot.undisturbed.resize(nz);
  problem.undisturbed.at(state.time, shot.undisturbed);
  shot.rise.resize(groups * nz * nr);
  shot.wall_temperature.assign(groups * nz, none);
  shot.fluid_down = shot.fluid_up = shot.grout = shot.wall_temperature;
  for (std::size_t g = 0; g < groups; ++g) {
    const double* block = state.y.data() + g * problem.block();
    for (std::size_t k = 0; k < nz; ++k) {
      for (std::size_t i = 0; i < nr; ++i) {
        shot.rise[(g * nz + k) * nr + i] = static_cast<float>(block[(march::rows::ground + i) * row + k]);
      }
    }
    for (std::size_t k = problem.groups[g].first; k < problem.groups[g].past; ++k) {
      shot.fluid_down[g * nz + k] = block[march::rows::down * row + k];
      shot.fluid_up[g * nz + k] = block[march::rows::up * row + k];
      shot.grout[g * nz + k] = mean_grout(problem, block, k);
    }
  }
  walls(problem, regime, state,
        [&](std::size_t g, std::size_t k, double wall) { shot.wall_temperature[g * nz + k] = wall; });
  return shot;
}

double mean_fluid_temperature(const march::Problem& problem, const march::State& state) {
  const std::size_t row = problem.row();
  double sum = 0, length = 0;
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const march::Group& group = problem.groups[g];
    const double* block = state.y.data() + g * problem.block();
    for (std::size_t k = group.first; k < group.past; ++k) {
      const double share = group.members * group.fraction[k] * problem.grid.height(k);
      sum += share * (block[march::rows::down * row + k] + block[march::rows::up * row + k]) / 2;
      length += share;
    }
  }
  return sum / length;
}

double coldest_wall(const march::Problem& problem, const march::FlowRegime& regime, const march::State& state) {
  double coldest = std::numeric_limits<double>::infinity();
  walls(problem, regime, state, [&](std::size_t, std::size_t, double wall) { coldest = std::min(coldest, wall); });
  return coldest;
}

}  // namespace stillground::run
