#include "validation/rig/growing_steps.hpp"

#include <algorithm>
#include <utility>

#include "engine/march/ambient.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/stage.hpp"
#include "engine/march/tableau.hpp"
#include "engine/march/workers.hpp"

namespace stillground::validation {

GrowingSteps::GrowingSteps(const march::Problem& problem, const march::Task& task, march::State state)
    : problem_(problem), task_(task), state_(std::move(state)) {}

void GrowingSteps::step(double h) {
  const double gamma = march::ars222::gamma, delta = march::ars222::delta;
  march::Workers workers(1);
  if (problem_.bores() > 1 && state_.time + h - state_.refreshed > problem_.refresh) {
    march::refresh_neighbours(problem_, state_, workers);
  }
  march::StageSolver solver(problem_, gamma * h, workers);
  const march::AxialFactors axial(problem_);
  const std::size_t n = problem_.size(), block = problem_.block();
  march::Vector e0(n), e1(n), y1(n), known(n), y2(n);
  const auto rate = [&](const march::Vector& y, march::Vector& e) {
    for (std::size_t g = 0; g < problem_.groups.size(); ++g) axial.rate(y.data() + g * block, e.data() + g * block);
  };
  const auto solve = [&](double c, march::Vector& y) {
    return solver.solve(
        state_, state_.time + c * h, task_, [&](std::size_t g) { return y.data() + g * block; }, [](std::size_t) {});
  };
  rate(state_.y, e0);
  for (std::size_t i = 0; i < n; ++i) y1[i] = known[i] = state_.y[i] + gamma * h * e0[i];
  solve(gamma, y1);
  rate(y1, e1);
  for (std::size_t i = 0; i < n; ++i) {
    y2[i] = state_.y[i] + h * (delta * e0[i] + (1 - delta) * e1[i]) + (1 - gamma) / gamma * (y1[i] - known[i]);
  }
  meeting_ = solve(1, y2);
  state_.y = y2;
  state_.time += h;
  heat_ = solver.wall_heat();
}

void GrowingSteps::march(const std::vector<double>& times, double first_step, double longest_step,
                         const std::function<void(double)>& at) {
  for (const double target : times) {
    while (state_.time < target) {
      const double wanted = std::clamp(state_.time / 50, first_step, longest_step);
      const double left = target - state_.time;
      step(left <= wanted * 1.5 ? left : wanted);
    }
    at(state_.time);
  }
}

}  // namespace stillground::validation
