#include "engine/march/growing_steps.hpp"

#include <algorithm>
#include <utility>

#include "engine/march/ambient.hpp"
#include "engine/march/tableau.hpp"

namespace stillground::march {

GrowingSteps::GrowingSteps(const Problem& problem, const Multirate& multirate, const Forcing& forcing, State state,
                           Axial axial)
    : problem_(problem),
      multirate_(multirate),
      layout_(problem),
      forcing_(forcing),
      state_(std::move(state)),
      axial_(problem),
      first_rate_(layout_.size()),
      second_rate_(layout_.size()),
      known_(layout_.size()),
      stage_(layout_.size()) {
  if (axial == Axial::by_factors) implicit_.emplace(problem);
}

void GrowingSteps::axial_rate(const Vector& y, Vector& rate) const {
  for (std::size_t g = 0; g < problem_.groups.size(); ++g) {
    axial_.rate(y.data() + g * layout_.block(), rate.data() + g * layout_.block());
  }
}

/// y <- from + (1 - kappa E)^-1 (y - from), of a group's ground.
void GrowingSteps::factor_out(double kappa, const double* from, double* y) {
  for (std::size_t i = 0; i < layout_.block(); ++i) y[i] -= from[i];
  implicit_->solve(kappa, y);
  for (std::size_t i = 0; i < layout_.block(); ++i) y[i] += from[i];
}

/// A step of ARS(2,2,2), E axial conduction:
///   Y_1 = [y + gamma h E(y)] + gamma h I(Y_1)
///   Y_2 = [y + h (delta E(y) + (1 - delta) E(Y_1)) + (1 - gamma)/gamma (Y_1 - y - gamma h E(y))] + gamma h I(Y_2)
template <class Solve>
void GrowingSteps::explicit_step(double h, Solve&& solve) {
  using ars222::delta, ars222::gamma;
  Vector& y = state_.y;
  axial_rate(y, first_rate_);
  for (std::size_t i = 0; i < y.size(); ++i) stage_[i] = known_[i] = y[i] + gamma * h * first_rate_[i];
  solve(
      gamma, [&](std::size_t g) { return stage_.data() + g * layout_.block(); }, [](std::size_t) {});
  axial_rate(stage_, second_rate_);
  for (std::size_t i = 0; i < y.size(); ++i) {
    y[i] +=
        h * (delta * first_rate_[i] + (1 - delta) * second_rate_[i]) + (1 - gamma) / gamma * (stage_[i] - known_[i]);
  }
  point_ = solve(
      1, [&](std::size_t g) { return y.data() + g * layout_.block(); }, [](std::size_t) {});
}

/// A step of the implicit scheme's two stages for I + E, each Y = b + kappa (I + E)(Y), kappa = gamma h, solved about a
/// guess G by factors (Douglas & Gunn 1964, Numerische Mathematik 6 [from memory]):
///   Z = [b + kappa E(G)] + kappa I(Z),   Y = G + (1 - kappa E)^-1 (Z - G).
/// What the factors miss, kappa^2 E I (Y - G), is nothing in steady state. b and G of the first stage are y, of the
/// second y + (1 - gamma)/gamma (Y_1 - y) and y + (Y_1 - y)/gamma.
/// Group by group, while its memory is near.
template <class Solve>
void GrowingSteps::factored_step(double h, Solve&& solve) {
  using ars222::gamma;
  const double kappa = gamma * h;
  const std::size_t size = layout_.block();
  const auto of = [&](Vector& all, std::size_t g) { return all.data() + g * size; };
  double* rate = first_rate_.data();
  const auto first = [&](std::size_t g) {
    const double* y = of(state_.y, g);
    double* stage = of(stage_, g);
    axial_.rate(y, rate);
    for (std::size_t i = 0; i < size; ++i) stage[i] = y[i] + kappa * rate[i];
    return stage;
  };
  const auto between = [&](std::size_t g) {
    double *y = of(state_.y, g), *stage = of(stage_, g), *known = of(known_, g);
    factor_out(kappa, y, stage);
    for (std::size_t i = 0; i < size; ++i) known[i] = y[i] + (stage[i] - y[i]) / gamma;
    axial_.rate(known, rate);
    for (std::size_t i = 0; i < size; ++i) y[i] += (1 - gamma) / gamma * (stage[i] - y[i]) + kappa * rate[i];
  };
  solve(gamma, first, between);
  point_ = solve(
      1, [&](std::size_t g) { return of(state_.y, g); },
      [&](std::size_t g) { factor_out(kappa, of(known_, g), of(state_.y, g)); });
}

void GrowingSteps::step(double h) {
  if (problem_.bores() > 1 && state_.time + h - state_.updated > multirate_.update_interval) {
    update_neighbours(problem_, multirate_, state_, workers_);
  }
  if (!solver_ || solved_ != h) solver_.emplace(problem_, multirate_, ars222::gamma * h, workers_);
  solved_ = h;
  const auto solve = [&](double c, auto&& block, auto&& done) {
    return solver_->solve(state_, state_.time + c * h, forcing_, block, done);
  };
  if (implicit_) {
    factored_step(h, solve);
  } else {
    explicit_step(h, solve);
  }
  state_.time += h;
}

void GrowingSteps::march(const std::vector<double>& times, double first_step, double longest_step,
                         const std::function<void(double)>& at, double part) {
  for (const double target : times) {
    while (state_.time < target) {
      const double wanted = std::clamp(state_.time * part, first_step, longest_step);
      const double left = target - state_.time;
      step(left <= wanted * 1.5 ? left : wanted);
    }
    at(state_.time);
  }
}

}  // namespace stillground::march
