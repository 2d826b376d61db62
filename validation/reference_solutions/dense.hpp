#pragma once

#include <cstddef>
#include <vector>

namespace stillground::reference_solutions {

struct QuadratureNode {
  double at, weight;
};

/// Gauss's rule on [-1, 1], its nodes by Newton's method.
std::vector<QuadratureNode> gauss_rule(std::size_t order);

/// x of matrix x = right by Gauss's elimination, rows exchanged; `matrix` [n][n], not singular.
std::vector<double> solved(std::vector<double> matrix, std::vector<double> right);

}  // namespace stillground::reference_solutions
