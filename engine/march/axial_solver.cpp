#include "engine/march/axial_solver.hpp"

#include "engine/march/state_layout.hpp"

namespace stillground::march {

AxialSolver::AxialSolver(const Problem& problem)
    : nr_(problem.nr()),
      nz_(problem.nz()),
      row_(StateLayout(problem).row()),
      ground_row_(StateLayout(problem).ground_row()),
      carry_(nz_),
      inverse_(nz_),
      back_(nz_) {
  const AxialFactors factors(problem);
  above_ = factors.above();
  below_ = factors.below();
}

/// Thomas's algorithm for (1 + kappa (a_k + b_k)) x_k - kappa a_k x_{k-1} - kappa b_k x_{k+1} = r_k:
///   m_k = 1/(1 + kappa (a_k + b_k) - kappa a_k back_{k-1}),   back_k = m_k kappa b_k.
void AxialSolver::factor(double kappa) {
  if (kappa == kappa_) return;
  kappa_ = kappa;
  double back = 0;
  for (std::size_t k = 0; k < nz_; ++k) {
    carry_[k] = kappa * above_[k];
    inverse_[k] = 1 / (1 + carry_[k] + kappa * below_[k] - carry_[k] * back);
    back_[k] = back = k + 1 < nz_ ? inverse_[k] * kappa * below_[k] : 0;
  }
}

/// `rings` rings side by side: none waits for another's chain.
template <std::size_t rings>
void AxialSolver::solve_rings(double* x) const {
  const std::size_t next = row_;  // ring
  for (std::size_t i = 0; i < rings; ++i) x[i * next] *= inverse_[0];
  for (std::size_t k = 1; k < nz_; ++k) {
    for (std::size_t i = 0; i < rings; ++i) {
      double* at = x + i * next + k;
      *at = (*at + carry_[k] * at[-1]) * inverse_[k];
    }
  }
  for (std::size_t k = nz_ - 1; k-- > 0;) {
    for (std::size_t i = 0; i < rings; ++i) {
      double* at = x + i * next + k;
      *at += back_[k] * at[1];
    }
  }
}

void AxialSolver::solve(double kappa, double* block) {
  factor(kappa);
  constexpr std::size_t together = 12;
  double* first = block + ground_row_ * row_;
  std::size_t i = 0;
  for (; i + together <= nr_; i += together) solve_rings<together>(first + i * row_);
  for (; i < nr_; ++i) solve_rings<1>(first + i * row_);
}

}  // namespace stillground::march
