#include "validation/rig/uniform_bore.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/field/groups.hpp"
#include "engine/field/superposition.hpp"
#include "engine/ground/axial.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/stage.hpp"
#include "engine/march/tableau.hpp"

namespace stillground::validation {

namespace {

constexpr double heat_per_length = 50;  // [W/m]

march::Problem lone_problem(const ground::GridSpec& spec, const model::Solid& solid, const ground::Reach& reach) {
  const model::Ground ground{{{std::numeric_limits<double>::infinity(), "rock", solid}}, model::MeanOverBore{0}};
  const std::vector<model::BoreSite> bores{{0, 0, reach.top, reach.toe - reach.top, 0}};
  const auto grid = ground::make_grid(spec, ground.layers, {reach});
  march::Group group{ground::active_fraction(grid, reach), 0, 0, 1};
  while (group.fraction[group.first] == 0) ++group.first;
  group.past = group.first;
  while (group.past < grid.nz() && group.fraction[group.past] > 0) ++group.past;
  return {grid,
          ground::axial_conductances(grid),
          {group},
          field::Coupling(bores, field::lone_groups(1), grid.r),
          ground::Undisturbed(ground, grid, 0, 1),
          {},
          1,
          1e30};
}

}  // namespace

UniformBore::UniformBore(const ground::GridSpec& spec, const model::Solid& solid, const ground::Reach& reach)
    : problem_(lone_problem(spec, solid, reach)) {
  const auto network = bore::make_network({1000, 1e6, 0.5, 0.5, 1e-3, 1e-3});
  regime_ = {1, 1e9, std::vector<bore::Network>(problem_.nz(), network)};
  state_.y.assign(problem_.size(), 0.0);
  state_.neighbours.assign(problem_.row(), 0.0);
  state_.neighbours_before = state_.neighbours;
}

void UniformBore::step(double h) {
  const double gamma = march::ars222::gamma, delta = march::ars222::delta;
  double length = 0;
  for (std::size_t k = 0; k < problem_.nz(); ++k) length += problem_.groups[0].fraction[k] * problem_.grid.height(k);
  const march::Task task{{0, 0, 0, heat_per_length * length}, &regime_};
  march::Workers workers(1);
  march::StageSolver solver(problem_, gamma * h, workers);
  const march::AxialFactors axial(problem_);
  const std::size_t n = problem_.size();
  march::Vector e0(n), e1(n), y1(n), known(n), y2(n);
  const auto solve = [&](double c, march::Vector& y) {
    solver.solve(
        state_, state_.time + c * h, task, [&](std::size_t) { return y.data(); }, [](std::size_t) {});
  };
  axial.rate(state_.y.data(), e0.data());
  for (std::size_t i = 0; i < n; ++i) y1[i] = known[i] = state_.y[i] + gamma * h * e0[i];
  solve(gamma, y1);
  axial.rate(y1.data(), e1.data());
  for (std::size_t i = 0; i < n; ++i) {
    y2[i] = state_.y[i] + h * (delta * e0[i] + (1 - delta) * e1[i]) + (1 - gamma) / gamma * (y1[i] - known[i]);
  }
  solve(1, y2);
  state_.y = y2;
  state_.time += h;
  heat_ = solver.wall_heat();
}

void UniformBore::march(const std::vector<double>& times, double first_step, double longest_step,
                        const std::function<void(double)>& at) {
  for (const double target : times) {
    while (state_.time < target) {
      // Steps of a fiftieth of the time gone by: the answer changes with its logarithm.
      const double wanted = std::clamp(state_.time / 50, first_step, longest_step);
      const double left = target - state_.time;
      step(left <= wanted * 1.5 ? left : wanted);
    }
    at(state_.time);
  }
}

double UniformBore::mean(const std::function<double(std::size_t)>& of_layer) const {
  double sum = 0, length = 0;
  for (std::size_t k = problem_.groups[0].first; k < problem_.groups[0].past; ++k) {
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
  const double first = state_.y[march::rows::ground * problem_.row() + k];
  return (first + heat_[k] * march::wall_to_first_node(problem_.grid, problem_.grid.solid[k].conductivity)) /
         heat_per_length;
}

double UniformBore::at_distance(double distance, std::size_t k) const {
  double rise = 0;
  for (const auto& w : field::radial_weights(problem_.grid.r, distance)) {
    rise += w.weight * state_.y[(march::rows::ground + w.cell) * problem_.row() + k];
  }
  return rise / heat_per_length;
}

double UniformBore::at_distance(double distance) const {
  return mean([&](std::size_t k) { return at_distance(distance, k) * heat_per_length; });
}

}  // namespace stillground::validation
