#pragma once

#include <cstddef>
#include <vector>

#include "engine/march/state.hpp"

namespace stillground::march::fused {

/// Inlet of every bore while a group is marched through a span before its true inlets are known [K]: the point about
/// which the march is linear in them. Any would do; near the true ones little is left to round-off.
inline constexpr double linearisation_inlet = 283.15;

/// The discrete response of a bore and its ground to its inlet, over a span of S stages (two a step). The march is
/// linear in the inlets: with T* the linearisation inlet and D_t = T_in,t - T* of stage t,
///   T_out,s = T_out,s* + sum_{t <= s} g_{s,t} D_t,
///   y_end   = y_end*   + sum_t r_t D_t,
/// y all that the span changes (streams, nodes, ground, heat through the wall), * what is found at T*. g and r are what
/// a bore and ground at 0 do when the inlet is 1 K in stage t and 0 in all others. All steps are the same, so that
/// g_{s,t} and r_t depend on how many steps lie between and on t being a step's first stage or its second: two marches
/// from rest give them all.
class InletResponse {
 public:
  bool empty() const { return stages_ == 0; }

  /// `doubles`: of y; 0 where only the outlet is wanted.
  void resize(std::size_t stages, std::size_t doubles) {
    stages_ = stages;
    doubles_ = doubles;
    outlets_.assign(2 * stages, 0.0);
    lost_.assign(stages, 0.0);
    ends_.resize(stages * doubles);
  }

  /// g_{stage, of}, stages counted from the span's first; of <= stage.
  double outlet(std::size_t stage, std::size_t of) const { return outlets_[of % 2 * stages_ + stage - of / 2 * 2]; }

  /// r_of at the span's end, and the heat that the surface took meanwhile [J per K].
  const double* end_of_span(std::size_t of) const {
    return ends_.data() + slot(of % 2, stages_ / 2 - of / 2) * doubles_;
  }
  double lost_in_span(std::size_t of) const { return lost_[slot(of % 2, stages_ / 2 - of / 2)]; }

  // To be filled: for an inlet in the span's stage `of` (0 or 1) the outlet of each stage, and what y is `steps` steps
  // after that of the inlet has begun (1: at its end).
  double& outlet_from(std::size_t of, std::size_t stage) { return outlets_[of * stages_ + stage]; }
  double* end(std::size_t of, std::size_t steps) { return ends_.data() + slot(of, steps) * doubles_; }
  double& lost(std::size_t of, std::size_t steps) { return lost_[slot(of, steps)]; }

 private:
  std::size_t slot(std::size_t of, std::size_t steps) const { return of * (stages_ / 2) + steps - 1; }

  std::size_t stages_ = 0, doubles_ = 0;
  std::vector<double> outlets_;  // [stage of a step][stage]
  std::vector<double> lost_;     // [stage of a step][steps]
  Vector ends_;                  // the same
};

}  // namespace stillground::march::fused
