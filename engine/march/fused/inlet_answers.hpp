#pragma once

#include <cstddef>
#include <vector>

#include "engine/march/state.hpp"

namespace stillground::march::fused {

/// How a bore and its ground, all at 0 before, answer within a span of some steps to inlets that are 1 K warmer in a
/// single stage. Every step is alike, so that two answers are enough: to the first stage of a step and to the second.
/// What a group does at its true inlets is what it does at any given ones and these answers times the differences: so
/// the groups go through a whole span before field and heat pumps meet.
class InletAnswers {
 public:
  bool empty() const { return stages_ == 0; }

  void resize(std::size_t stages, std::size_t doubles) {
    stages_ = stages;
    doubles_ = doubles;
    outlets_.assign(2 * stages, 0.0);
    lost_.assign(stages, 0.0);
    ends_.resize(stages * doubles);
  }

  /// Outlet in `stage` per inlet in stage `of` <= stage, both counted from the span's first.
  double outlet(std::size_t stage, std::size_t of) const { return outlets_[of % 2 * stages_ + stage - of / 2 * 2]; }
  double& outlet_from(std::size_t of, std::size_t stage) { return outlets_[of * stages_ + stage]; }

  /// The state's gain `steps` steps after that of the inlet has begun (1: at its end), for `of` 0 or 1, and the heat
  /// that the surface took meanwhile [J].
  double* end(std::size_t of, std::size_t steps) { return ends_.data() + slot(of, steps) * doubles_; }
  const double* end(std::size_t of, std::size_t steps) const { return ends_.data() + slot(of, steps) * doubles_; }
  double& lost(std::size_t of, std::size_t steps) { return lost_[slot(of, steps)]; }
  double lost(std::size_t of, std::size_t steps) const { return lost_[slot(of, steps)]; }

  /// The same by the span's end, for any stage of it.
  const double* end_of_span(std::size_t of) const { return end(of % 2, stages_ / 2 - of / 2); }
  double lost_in_span(std::size_t of) const { return lost(of % 2, stages_ / 2 - of / 2); }

 private:
  std::size_t slot(std::size_t of, std::size_t steps) const { return of * (stages_ / 2) + steps - 1; }

  std::size_t stages_ = 0, doubles_ = 0;
  std::vector<double> outlets_;  // [stage of a step][stage]
  std::vector<double> lost_;     // [stage of a step][steps]
  Vector ends_;                  // the same
};

}  // namespace stillground::march::fused
