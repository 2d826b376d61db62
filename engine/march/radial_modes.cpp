#include "engine/march/radial_modes.hpp"

#include <Eigen/Dense>
#include <cmath>

#include "engine/march/radial.hpp"

namespace stillground::march {

namespace {

/// Eigenvalues of the symmetric tridiagonal matrix that Lanczos' recursion makes of a discrete measure: the nodes of
/// its Gauss quadrature.
std::vector<double> gauss_nodes(const Eigen::VectorXd& points, const Eigen::VectorXd& weights, Eigen::Index count) {
  Eigen::MatrixXd basis(points.size(), count);
  Eigen::VectorXd diagonal(count), beside(std::max<Eigen::Index>(count - 1, 0));
  Eigen::VectorXd q = weights.cwiseSqrt().normalized();
  for (Eigen::Index j = 0; j < count; ++j) {
    basis.col(j) = q;
    Eigen::VectorXd next = points.cwiseProduct(q);
    diagonal(j) = q.dot(next);
    // Twice is enough (Parlett): the basis stays orthogonal to round-off.
    for (int pass = 0; pass < 2; ++pass) next -= basis.leftCols(j + 1) * (basis.leftCols(j + 1).transpose() * next);
    if (j + 1 == count) break;
    beside(j) = next.norm();
    q = next / beside(j);
  }
  Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver;
  solver.computeFromTridiagonal(diagonal, beside, Eigen::EigenvaluesOnly);
  return {solver.eigenvalues().begin(), solver.eigenvalues().end()};
}

/// Lagrange's polynomial through the nodes that is 1 at node `which`, at x.
double lagrange(const std::vector<double>& nodes, std::size_t which, double x) {
  double product = 1;
  for (std::size_t j = 0; j < nodes.size(); ++j) {
    if (j != which) product *= (x - nodes[j]) / (nodes[which] - nodes[j]);
  }
  return product;
}

}  // namespace

RadialModes::RadialModes(const ground::Grid& grid) {
  const auto n = static_cast<Eigen::Index>(grid.nr());
  const auto at = [](Eigen::Index i) { return static_cast<std::size_t>(i); };
  Eigen::VectorXd inverse_root(n);
  for (Eigen::Index i = 0; i < n; ++i) inverse_root(i) = 1 / std::sqrt(grid.ring_area(at(i)));
  Eigen::MatrixXd symmetric = Eigen::MatrixXd::Zero(n, n);
  for (Eigen::Index i = 0; i + 1 < n; ++i) {
    const double conductance = grid.unit_conductance(at(i));
    symmetric(i, i) += conductance * inverse_root(i) * inverse_root(i);
    symmetric(i + 1, i + 1) += conductance * inverse_root(i + 1) * inverse_root(i + 1);
    symmetric(i + 1, i) -= conductance * inverse_root(i) * inverse_root(i + 1);
  }
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(symmetric);
  const Eigen::MatrixXd v = inverse_root.asDiagonal() * solver.eigenvectors();
  rates_.assign(solver.eigenvalues().begin(), solver.eigenvalues().end());
  rates_.front() = 0;
  shapes_.resize(size() * size());
  for (Eigen::Index i = 0; i < n; ++i) {
    for (Eigen::Index m = 0; m < n; ++m) shapes_[at(i) * size() + at(m)] = v(i, m) * v(0, m);
  }
  weights_.assign(shapes_.begin(), shapes_.begin() + n);
}

ReducedModes::ReducedModes(const RadialModes& modes, std::size_t slow_modes, std::size_t count)
    : slow(slow_modes), rates{0}, weights(count), share(slow_modes * count), start(slow_modes * count) {
  const auto n = static_cast<Eigen::Index>(slow);
  const Eigen::VectorXd points = Eigen::Map<const Eigen::VectorXd>(modes.rates().data(), n);
  const Eigen::VectorXd weight = Eigen::Map<const Eigen::VectorXd>(modes.weights().data(), n);
  // With one node at 0 the others are those of the measure times its points.
  for (const double node : gauss_nodes(points, weight.cwiseProduct(points), static_cast<Eigen::Index>(count) - 1)) {
    rates.push_back(node);
  }
  for (std::size_t m = 0; m < slow; ++m) {
    for (std::size_t l = 0; l < count; ++l) {
      share[m * count + l] = lagrange(rates, l, modes.rates()[m]);
      weights[l] += modes.weights()[m] * share[m * count + l];
    }
  }
  for (std::size_t m = 0; m < slow; ++m) {
    for (std::size_t l = 0; l < count; ++l) {
      start[m * count + l] = modes.weights()[m] * share[m * count + l] / weights[l];
    }
  }
}

}  // namespace stillground::march
