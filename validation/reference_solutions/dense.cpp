#include "validation/reference_solutions/dense.hpp"

#include <cmath>
#include <numbers>
#include <utility>

namespace stillground::reference_solutions {

std::vector<QuadratureNode> gauss_rule(std::size_t order) {
  std::vector<QuadratureNode> rule;
  const auto n = static_cast<double>(order);
  for (std::size_t i = 0; i < order; ++i) {
    double x = std::cos(std::numbers::pi * (static_cast<double>(i) + 0.75) / (n + 0.5)), slope = 0;
    for (int pass = 0; pass < 50; ++pass) {
      double before = 1, here = x;
      for (double k = 2; k <= n; ++k) before = std::exchange(here, ((2 * k - 1) * x * here - (k - 1) * before) / k);
      slope = n * (x * here - before) / (x * x - 1);
      x -= here / slope;
    }
    rule.push_back({x, 2 / ((1 - x * x) * slope * slope)});
  }
  return rule;
}

std::vector<double> solved(std::vector<double> matrix, std::vector<double> right) {
  const std::size_t n = right.size();
  for (std::size_t p = 0; p < n; ++p) {
    std::size_t best = p;
    for (std::size_t i = p + 1; i < n; ++i) {
      if (std::abs(matrix[i * n + p]) > std::abs(matrix[best * n + p])) best = i;
    }
    for (std::size_t j = 0; j < n; ++j) std::swap(matrix[p * n + j], matrix[best * n + j]);
    std::swap(right[p], right[best]);
    for (std::size_t i = p + 1; i < n; ++i) {
      const double factor = matrix[i * n + p] / matrix[p * n + p];
      if (factor == 0) continue;
      for (std::size_t j = p; j < n; ++j) matrix[i * n + j] -= factor * matrix[p * n + j];
      right[i] -= factor * right[p];
    }
  }
  for (std::size_t p = n; p-- > 0;) {
    for (std::size_t j = p + 1; j < n; ++j) right[p] -= matrix[p * n + j] * right[j];
    right[p] /= matrix[p * n + p];
  }
  return right;
}

}  // namespace stillground::reference_solutions
