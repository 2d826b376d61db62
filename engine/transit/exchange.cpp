#include "engine/transit/exchange.hpp"

#include <Eigen/Dense>
#include <unsupported/Eigen/MatrixFunctions>

namespace stillground::transit {

namespace {

using Index = Eigen::Index;

/// x' = A x with x = (unknowns, E, heat to the ground so far [J/m]); E' = 0.
Eigen::MatrixXd rates(const bore::Network& network, double first_resistance) {
  const auto streams = static_cast<Index>(network.streams());
  const Index n = 3 * streams, ground = n, heat = n + 1;
  Eigen::MatrixXd a = Eigen::MatrixXd::Zero(n + 2, n + 2);
  for (Index m = 0; m < streams; ++m) {
    const bore::Mode& mode = network.modes.at(static_cast<std::size_t>(m));
    const bool to_wall = m == 0, stores = mode.inner_capacity > 0 && mode.outer_capacity > 0;
    const double beyond = to_wall ? first_resistance : 0.0;
    const Index inner = streams + 2 * m, outer = inner + 1;
    // q_m and q_out as rows over x.
    Eigen::RowVectorXd leaves = Eigen::RowVectorXd::Zero(n + 2), out = leaves;
    for (Index s = 0; s < streams; ++s) leaves(s) = mode.reads.at(static_cast<std::size_t>(s));
    if (stores) {
      leaves(inner) -= 1;
      leaves /= mode.inner;
      out(outer) = 1 / (mode.outer + beyond);
      if (to_wall) out(ground) = -1 / (mode.outer + beyond);
      Eigen::RowVectorXd across = Eigen::RowVectorXd::Zero(n + 2);
      across(inner) = 1 / mode.middle;
      across(outer) = -1 / mode.middle;
      a.row(inner) = (leaves - across) / mode.inner_capacity;
      a.row(outer) = (across - out) / mode.outer_capacity;
    } else {
      if (to_wall) leaves(ground) -= 1;
      leaves /= mode.resistance() + beyond;
      out = leaves;
    }
    for (Index s = 0; s < streams; ++s) {
      const auto stream = static_cast<std::size_t>(s);
      a.row(s) -= mode.gives.at(stream) / network.capacity.at(stream) * leaves;
    }
    if (to_wall) a.row(heat) = out;
  }
  return a;
}

}  // namespace

Exchange exchange_over(const bore::Network& network, double first_resistance, double step) {
  Exchange exchange;
  exchange.unknowns = 3 * network.streams();
  const auto n = static_cast<Index>(exchange.unknowns);
  const Eigen::MatrixXd whole = (rates(network, first_resistance) * step).exp();
  for (Index row = 0; row <= n; ++row) {
    const bool heat = row == n;
    for (Index column = 0; column <= n; ++column) {
      exchange.matrix.push_back(heat ? whole(n + 1, column) / step : whole(row, column));
    }
  }
  return exchange;
}

}  // namespace stillground::transit
