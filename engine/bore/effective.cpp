#include <Eigen/Dense>
#include <unsupported/Eigen/MatrixFunctions>

#include "engine/bore/resistance.hpp"

namespace stillground::bore {

double effective_resistance(const Network& network, double length, double heat_rate, double ground) {
  const auto n = static_cast<Eigen::Index>(network.streams()), m = n / 2;
  // Heat that each stream gives off per length, of temperatures above the wall or the ground beyond it.
  Eigen::MatrixXd exchange = Eigen::MatrixXd::Zero(n, n);
  for (std::size_t which = 0; which < network.streams(); ++which) {
    const Mode& mode = network.modes.at(which);
    const Eigen::Map<const Eigen::VectorXd> gives(mode.gives.data(), n), reads(mode.reads.data(), n);
    // Mode 0 alone goes on into the ground.
    exchange += gives * reads.transpose() / (mode.resistance() + (which == 0 ? ground : 0.0));
  }
  // Down the bore dT/dz = -q/W in streams that go down, +q/W in those that go up.
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
  const double outlet = equations.fullPivLu().solve(right)(n - 1);
  return (1 + outlet) / 2 * length / (heat_rate * (1 - outlet)) - ground;
}

}  // namespace stillground::bore
