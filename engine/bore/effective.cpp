#include "engine/bore/effective.hpp"

#include <Eigen/Dense>
#include <cassert>
#include <cmath>
#include <unsupported/Eigen/MatrixFunctions>

namespace stillground::bore {

LegResistances leg_resistances(const Eigen::MatrixXd& matrix) {
  assert(matrix.rows() == 2 && matrix.cols() == 2);
  return {(matrix(0, 0) + matrix(0, 1)) / 2, 2 * (matrix(0, 0) - matrix(0, 1))};
}

double effective_resistance(const Network& network, double length, double heat_rate, double ground) {
  const auto n = static_cast<Eigen::Index>(network.streams()), m = n / 2;
  // Heat per length that stream s gives off: q_s = sum_m gives_ms (sum_t reads_mt T_t)/R_m = (E T)_s, temperatures
  // above the wall, or above the ground beyond it.
  Eigen::MatrixXd exchange = Eigen::MatrixXd::Zero(n, n);
  for (std::size_t which = 0; which < network.streams(); ++which) {
    const Mode& mode = network.modes.at(which);
    const Eigen::Map<const Eigen::VectorXd> gives(mode.gives.data(), n), reads(mode.reads.data(), n);
    // Mode 0 alone goes on into the ground.
    exchange += gives * reads.transpose() / (mode.resistance() + (which == 0 ? ground : 0.0));
  }
  // W dT/dz = -q in streams that go down, +q in those that go up: T(H) = exp(E H/W) T(0) with the sign in E.
  exchange.topRows(m) *= -1;
  const Eigen::MatrixXd to_toe = (exchange * (length / heat_rate)).exp();
  // Unknown are all streams' temperatures at the top: at the toe a pass' two are one; at the top the first pass enters
  // at 1, each later one with what the one before brought up.
  Eigen::MatrixXd equations = Eigen::MatrixXd::Zero(n, n);
  Eigen::VectorXd right = Eigen::VectorXd::Zero(n);
  for (Eigen::Index pass = 0; pass < m; ++pass) {
    equations.row(pass) = to_toe.row(pass) - to_toe.row(m + pass);
    equations(m + pass, pass) = 1;
    if (pass == 0) {
      right(m) = 1;
    } else {
      equations(m + pass, m + pass - 1) = -1;
    }
  }
  // With T_in = 1: H q' = W (1 - T_out), R_b* = (1 + T_out)/2 / q'.
  const double outlet = equations.fullPivLu().solve(right)(n - 1);
  return (1 + outlet) / 2 * length / (heat_rate * (1 - outlet)) - ground;
}

double effective_resistance_uniform_flux(const LegResistances& legs, double length, double mass_flow,
                                         double heat_capacity) {
  const double ratio = length / (mass_flow * heat_capacity);
  return legs.bore + ratio * ratio / (3 * legs.internal);
}

double effective_resistance_uniform_wall(const LegResistances& legs, double length, double mass_flow,
                                         double heat_capacity) {
  const double eta = length / (mass_flow * heat_capacity * std::sqrt(legs.internal * legs.bore));
  return legs.bore * eta / std::tanh(eta);
}

}  // namespace stillground::bore
