#include "engine/screen/stage_solver.hpp"

#include "engine/march/instruction_sets.hpp"

namespace stillground::screen {

StageSolver::StageSolver(const RowMatrix& rates, double kappa) {
  const auto n = static_cast<std::size_t>(rates.rows());
  RowMatrix a = -kappa * rates;
  a.diagonal().array() += 1;
  const auto at = [&](std::size_t i, std::size_t j) -> double& { return a.data()[i * n + j]; };
  std::vector<std::size_t> right;  // columns of the pivot's row that are not zero
  for (std::size_t k = 0; k < n; ++k) {
    right.clear();
    for (std::size_t j = k + 1; j < n; ++j) {
      if (at(k, j) != 0) right.push_back(j);
    }
    for (std::size_t i = k + 1; i < n; ++i) {
      if (at(i, k) == 0) continue;
      const double factor = at(i, k) /= at(k, k);
      for (const std::size_t j : right) at(i, j) -= factor * at(k, j);
    }
  }
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (at(i, j) != 0) lower_.push_back({j, at(i, j)});
    }
    for (std::size_t j = i + 1; j < n; ++j) {
      if (at(i, j) != 0) upper_.push_back({j, at(i, j)});
    }
    lower_end_.push_back(lower_.size());
    upper_end_.push_back(upper_.size());
    diagonal_.push_back(1 / at(i, i));
  }
}

namespace {

/// x_i <- (x_i - sum_j a_ij x_j) d, a row of packs each.
STILLGROUND_CLONED
void eliminate(double* to, const double* rows, std::size_t packs, const std::size_t* columns, const double* values,
               std::size_t stride, std::size_t count, double diagonal) {
  auto* x = reinterpret_cast<Wide*>(to);
  const auto* from = reinterpret_cast<const Wide*>(rows);
  for (std::size_t p = 0; p < packs; ++p) {
    Wide sum = x[p];
    for (std::size_t e = 0; e < count; ++e) sum -= from[columns[e * stride] * packs + p] * values[e * stride];
    x[p] = sum * diagonal;
  }
}

}  // namespace

void StageSolver::solve(PackedRows& columns) const {
  const std::size_t n = diagonal_.size();
  static_assert(sizeof(Entry) == 2 * sizeof(double));
  const auto row = [&](std::size_t i, const std::vector<Entry>& entries, std::size_t from, std::size_t to, double d) {
    if (from == to && d == 1) return;
    const Entry* first = entries.data() + from;
    eliminate(columns.row(i), columns.row(0), columns.packs, &first->column, &first->value, 2, to - from, d);
  };
  for (std::size_t i = 0; i < n; ++i) row(i, lower_, i > 0 ? lower_end_[i - 1] : 0, lower_end_[i], 1);
  for (std::size_t i = n; i-- > 0;) row(i, upper_, i > 0 ? upper_end_[i - 1] : 0, upper_end_[i], diagonal_[i]);
}

}  // namespace stillground::screen
