#include "engine/march/rates.hpp"

#include <algorithm>

#include "engine/march/radial.hpp"

namespace stillground::march {

namespace {

double topmost(const Problem& problem, const double* y, std::size_t which) {
  double sum = 0;
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const Group& group = problem.groups[g];
    sum += group.members * y[g * problem.block() + which * problem.row() + group.first];
  }
  return sum / problem.bores();
}

/// Radial conduction within the ground of one group; the wall's heat is added by the bore.
void add_radial(const Problem& problem, const double* y, double* rate) {
  for (std::size_t i = 0; i + 1 < problem.nr(); ++i) {
    const double conductance = unit_conductance(problem.grid, i);
    for (std::size_t k = 0; k < problem.nz(); ++k) {
      const std::size_t inner = (rows::ground + i) * problem.row() + k;
      const std::size_t outer = inner + problem.row();
      const model::Solid& solid = problem.grid.solid[k];
      const double heat = conductance * solid.conductivity * (y[inner] - y[outer]);
      rate[inner] -= heat / (solid.heat_capacity * problem.grid.ring_area(i));
      rate[outer] += heat / (solid.heat_capacity * problem.grid.ring_area(i + 1));
    }
  }
}

/// Streams, grout and wall of one group.
void add_bore(const Problem& problem, const Group& group, const FlowRegime& regime, double inlet, const double* y,
              const double* ambient, double* rate) {
  const std::size_t row = problem.row();
  const double* down = y + rows::down * row;
  const double* up = y + rows::up * row;
  for (std::size_t k = group.first; k < group.past; ++k) {
    const bore::Network& net = regime.networks[k];
    const double length = group.fraction[k] * problem.grid.height(k);
    const double above = k == group.first ? inlet : down[k - 1];
    const double below = k + 1 == group.past ? down[k] : up[k + 1];
    const bool flows = regime.heat_rate > 0;
    const double mean_down = flows ? (above + down[k]) / 2 : down[k];
    const double mean_up = flows ? (below + up[k]) / 2 : up[k];
    const double even_inner = y[rows::even_inner * row + k], even_outer = y[rows::even_outer * row + k];
    const double odd_inner = y[rows::odd_inner * row + k], odd_outer = y[rows::odd_outer * row + k];
    const double theta = y[rows::ground * row + k];

    const double fluid_even = ((mean_down + mean_up) / 2 - even_inner) / net.even.inner;
    const double fluid_odd = ((mean_down - mean_up) / 2 - odd_inner) / net.odd.inner;
    const double even_between = (even_inner - even_outer) / net.even.middle;
    const double odd_between = (odd_inner - odd_outer) / net.odd.middle;
    const model::Solid& solid = problem.grid.solid[k];
    const double wall =
        (even_outer - ambient[k] - theta) / (net.even.outer + wall_to_first_node(problem.grid, solid.conductivity));

    const double storage = net.fluid_capacity * length;
    rate[rows::down * row + k] +=
        (regime.heat_rate * (above - down[k]) - length * (fluid_even / 2 + fluid_odd)) / storage;
    rate[rows::up * row + k] += (regime.heat_rate * (below - up[k]) - length * (fluid_even / 2 - fluid_odd)) / storage;
    rate[rows::even_inner * row + k] += (fluid_even - even_between) / net.even.inner_capacity;
    rate[rows::even_outer * row + k] += (even_between - wall) / net.even.outer_capacity;
    rate[rows::odd_inner * row + k] += (fluid_odd - odd_between) / net.odd.inner_capacity;
    rate[rows::odd_outer * row + k] += (odd_between - odd_outer / net.odd.outer) / net.odd.outer_capacity;
    rate[rows::ground * row + k] += group.fraction[k] * wall / (solid.heat_capacity * problem.grid.ring_area(0));
  }
}

}  // namespace

double mixed_outlet(const Problem& problem, const double* y) {
  return topmost(problem, y, rows::up);
}

double topmost_down(const Problem& problem, const double* y) {
  return topmost(problem, y, rows::down);
}

void implicit_rate(const Problem& problem, const Task& task, const double* y, const double* ambient, double* rate) {
  std::fill(rate, rate + problem.size(), 0.0);
  double inlet = 0;
  if (task.regime->heat_rate > 0) {
    const double eft = mixed_outlet(problem, y);
    const auto exchange = loop::exchange(task.demand, problem.pumps, eft);
    inlet = eft + exchange.to_ground / (task.regime->heat_rate * problem.bores());
  }
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const double* block = y + g * problem.block();
    add_radial(problem, block, rate + g * problem.block());
    add_bore(problem, problem.groups[g], *task.regime, inlet, block, ambient + g * problem.row(),
             rate + g * problem.block());
  }
}

}  // namespace stillground::march
