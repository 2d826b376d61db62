#include "engine/march/ambient.hpp"

#include <algorithm>

namespace stillground::march {

void refresh_neighbours(const Problem& problem, State& state, Workers& workers) {
  state.neighbours_before.swap(state.neighbours);
  const std::size_t row = problem.row();
  workers.each(problem.groups.size(), [&](std::size_t a) {
    double* sum = state.neighbours.data() + a * row;
    std::fill(sum, sum + row, 0.0);
    for (const auto& term : problem.coupling.terms(a)) {
      const double* source = state.y.data() + term.source * problem.block() + (problem.ground_row() + term.cell) * row;
      for (std::size_t k = 0; k < row; ++k) sum[k] += term.weight * source[k];
    }
  });
  state.refreshed = state.time;
}

bool refresh_due(const Problem& problem, const State& state) {
  // Half a step's slack: times are sums of steps.
  return problem.bores() > 1 && state.time - state.refreshed > problem.refresh - problem.step / 2;
}

void ambient(const Problem& problem, const State& state, double time, std::size_t g,
             std::span<const double> undisturbed, std::span<double> result) {
  const std::size_t row = problem.row();
  const double ahead = (time - state.refreshed) / problem.refresh;
  const double* now = state.neighbours.data() + g * row;
  const double* before = state.neighbours_before.data() + g * row;
  for (std::size_t k = 0; k < problem.nz(); ++k) result[k] = undisturbed[k] + now[k] + ahead * (now[k] - before[k]);
  std::fill(result.begin() + static_cast<std::ptrdiff_t>(problem.nz()), result.end(), 0.0);
}

}  // namespace stillground::march
