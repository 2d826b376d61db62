#pragma once

#include <array>

#include "engine/march/bore_layers.hpp"
#include "engine/march/fused/kernels.hpp"
#include "engine/march/problem.hpp"
#include "engine/march/radial.hpp"

namespace stillground::march::fused {

/// A bore's factors as the kernels want them: the layers side by side.
class PackedBore {
 public:
  /// Forms them anew, in the memory they have.
  /// `lanes`: of the kernels.
  void make(const Problem& problem, const Group& group, const FlowRegime& regime, const Vector& wall_response,
            double kappa, std::size_t lanes);

  const BoreFactors& factors() const { return factors_; }

  /// As march::BoreElimination has it.
  double gain() const { return passes_ == 1 ? one_.gain() : two_.gain(); }

  /// The outlet at an inlet of 0, from what each pass brings up at inlets of 0.
  double outlet(const std::array<double, 2>& up) const;

  /// Inlets of the passes.
  std::array<double, 2> inlets(double inlet, const std::array<double, 2>& up) const;

 private:
  template <int M>
  void lay_out(const Problem& problem, const BoreLayers<M>& layers, std::size_t lanes);
  template <int M>
  void lay_out(const BoreLayer<M>& layer, std::size_t k, bool flows);
  template <int M>
  void lay_out_runs(std::size_t lanes);

  std::size_t passes_ = 1;
  BoreLayers<1> one_;
  BoreLayers<2> two_;
  Vector memory_;
  BoreFactors factors_;
  struct Rows {
    double *response, *from_below, *from_inlet, *up_runs, *up_carries, *down_runs, *down_carries, *top, *toe,
        *inner_from_old, *inner_from_outer, *outer_from_old, *outer_from_inner, *outer_from_far, *inner_from_streams,
        *conductance, *wall_response;
  } rows_ = {};
};

}  // namespace stillground::march::fused
