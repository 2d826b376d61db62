#include "engine/screen/hourly_propagator.hpp"

#include <Eigen/Dense>
#include <Eigen/Eigenvalues>
#include <cmath>
#include <random>

#include "engine/base/calendar.hpp"
#include "engine/march/instruction_sets.hpp"
#include "engine/march/tableau.hpp"

namespace stillground::screen {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::RowVectorXd;
using Eigen::VectorXd;

// A step h of the two implicit stages, for x' = R x with K = (1 - gamma h R)^-1 and c = (1 - gamma)/gamma:
//   x_1 = K x,   x_2 = K (x + c (K - 1) x) = K ((1 - c) + c K) x,   x(h) = x_2,
// since h R K = (K - 1)/gamma: the rates cancel. A mean over the step has the stages' weights, (1 - gamma) x_1 + gamma
// x_2; a mean over the hour is that of its steps.
FullPropagator over_an_hour(const Circuit& circuit, const MatrixXd& rates, double step) {
  using march::ars222::gamma;
  const Index n = circuit.size();
  const MatrixXd one = MatrixXd::Identity(n, n);
  const MatrixXd stage = (one - gamma * step * rates).partialPivLu().solve(one);
  const double carried = (1 - gamma) / gamma;
  const MatrixXd over_a_step = stage * ((1 - carried) * one + carried * stage);
  const auto mean_over_a_step = [&](const RowVectorXd& of) -> RowVectorXd {
    return (1 - gamma) * (of * stage) + gamma * (of * over_a_step);
  };
  const auto steps = static_cast<int>(std::lround(seconds_per_hour / step));
  RowVectorXd outlet = mean_over_a_step(circuit.outlet()), down = mean_over_a_step(circuit.topmost_down());
  FullPropagator propagator{over_a_step, outlet, down};
  for (int i = 1; i < steps; ++i) {
    outlet = outlet * over_a_step;
    down = down * over_a_step;
    propagator.outlet += outlet;
    propagator.down += down;
    propagator.after = propagator.after * over_a_step;
  }
  propagator.outlet /= steps;
  propagator.down /= steps;
  return propagator;
}

namespace {

/// What hours leave behind, one a column, from rest on: fluid that flows or stands alternately, for an hour or many,
/// with loads drawn up to `load` [W] and `profile` times the undisturbed profile.
MatrixXd random_hours(const Circuit& circuit, const FullPropagator& standing, const FullPropagator& flowing,
                      double load, double profile) {
  constexpr int hours = 240;
  std::mt19937 bits(1);
  const auto chance = [&] { return static_cast<double>(bits()) * 0x1p-32; };
  MatrixXd seen(circuit.lasting(), hours);
  VectorXd state = profile * circuit.profile_at_rest();
  const FullPropagator* now = &standing;
  for (int hour = 0; hour < hours; ++hour) {
    if (chance() < 0.5) {
      now = chance() < 0.3 ? &standing : &flowing;
      state(circuit.load()) = now == &standing ? 0 : load * (2 * chance() - 1);
    }
    state = (now->after * state).eval();
    state(circuit.heat()) = 0;
    seen.col(hour) = state.head(circuit.lasting());
  }
  return seen;
}

}  // namespace

MatrixXd modes(const Circuit& circuit, const FullPropagator& standing, const FullPropagator& flowing) {
  const Index lasting = circuit.lasting();
  // Of some 10 K either of them: none is left to the other's mercy.
  const MatrixXd loaded = random_hours(circuit, standing, flowing, 5000, 0);
  const MatrixXd levelled = random_hours(circuit, standing, flowing, 0, 5);
  MatrixXd seen(lasting, loaded.cols() + levelled.cols());
  seen << loaded, levelled;
  MatrixXd known(lasting, 2);
  known.col(0) = circuit.at_rest().head(lasting).normalized();
  VectorXd profile = circuit.profile_at_rest().head(lasting);
  profile -= known.col(0) * known.col(0).dot(profile);
  known.col(1) = profile;
  const bool layered = profile.norm() > 1e-9;
  if (layered) known.col(1).normalize();
  const Index given = layered ? 2 : 1;
  seen -= known.leftCols(given) * (known.leftCols(given).transpose() * seen);
  const Eigen::SelfAdjointEigenSolver<MatrixXd> modes(seen * seen.transpose());  // strongest last
  MatrixXd made(lasting, static_cast<Index>(HourlyPropagator::modes));
  made.leftCols(given) = known.leftCols(given);
  const Index rest = made.cols() - given;
  made.rightCols(rest) = modes.eigenvectors().rightCols(rest);
  return made;
}

HourlyPropagator on_modes(const Circuit& circuit, const FullPropagator& whole, const MatrixXd& modes) {
  HourlyPropagator propagator;
  const Index lasting = circuit.lasting(), count = modes.cols(), driven = circuit.size() - circuit.ambient();
  const auto put = [&](Index row, const RowVectorXd& of) {
    const RowVectorXd on = of.head(lasting) * modes;
    const auto entry = [&](Index column) -> double& {
      return propagator
          .entries[static_cast<std::size_t>(column) * HourlyPropagator::rows + static_cast<std::size_t>(row)];
    };
    for (Index column = 0; column < count; ++column) entry(column) = on(column);
    for (Index column = 0; column < driven; ++column) entry(count + column) = of(circuit.ambient() + column);
  };
  const MatrixXd after = modes.transpose() * whole.after.topRows(lasting);
  for (Index row = 0; row < count; ++row) put(row, after.row(row));
  put(HourlyPropagator::outlet, whole.outlet);
  put(HourlyPropagator::down, whole.down);
  put(HourlyPropagator::heat, whole.after.row(circuit.heat()));
  return propagator;
}

namespace {

/// Half of the rows side by side.
using Half = double __attribute__((vector_size(HourlyPropagator::rows / 2 * sizeof(double)), aligned(64)));

STILLGROUND_CLONED
void multiply(const double* entries, const double* of, double* result) {
  const auto* column = reinterpret_cast<const Half*>(entries);
  Half upper{}, lower{};
  for (std::size_t i = 0; i < HourlyPropagator::columns; ++i, column += 2) {
    upper += column[0] * of[i];
    lower += column[1] * of[i];
  }
  auto* to = reinterpret_cast<Half*>(result);
  to[0] = upper;
  to[1] = lower;
}

}  // namespace

std::array<double, HourlyPropagator::rows> HourlyPropagator::times(const std::array<double, columns>& of) const {
  alignas(64) std::array<double, rows> result;
  multiply(entries.data(), of.data(), result.data());
  return result;
}

HourlyPropagator between(const HourlyPropagator& a, const HourlyPropagator& b, double part) {
  HourlyPropagator propagator;
  for (std::size_t i = 0; i < propagator.entries.size(); ++i)
    propagator.entries[i] = std::lerp(a.entries[i], b.entries[i], part);
  return propagator;
}

}  // namespace stillground::screen
