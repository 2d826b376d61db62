#pragma once

#include <vector>

#include "engine/march/fused/group_view.hpp"
#include "engine/march/fused/kernels.hpp"
#include "engine/march/problem.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/state.hpp"
#include "engine/march/state_layout.hpp"

namespace stillground::march::fused {

/// The ground around the bores at a single rate: every ring takes every step, radial conduction implicitly, axial
/// conduction explicitly in every stage. With E axial and I radial conduction, h the step, y old and Y the first stage,
///   (1 - gamma h I) Y   = y + gamma h E(y)
///   (1 - gamma h I) Y_2 = second_of_old y + second_of_first Y + h E((delta - 1 + gamma) y + (1 - delta) Y)
/// (see ars222): from the outer ring inwards to the wall, and once the bore is solved from there outwards.
class RingGround {
 public:
  RingGround(const Problem& problem, const Multirate& multirate, const Kernels& kernels);

  /// The innermost ring per heat through the wall within a stage, [z] [K m/W].
  const Vector& wall_response() const { return radial_.wall_response(); }

  /// Rows of a view's scratch, and how many of the state's an hour changes: ground rows of y, amplitudes from `stepped`
  /// on, in which layers.
  std::size_t scratch_rows() const { return layout_.nr; }
  std::size_t ground_rows() const { return layout_.nr; }
  std::size_t stepped_rows() const { return 0; }
  double* stepped(const GroupView& view) const { return view.amplitudes; }
  LayerRange layers(const Group&) const { return {0, layout_.row()}; }

  /// The innermost ring within a stage (of those that go on without a break, from 0 on) as it would be without heat
  /// from the bore [z]; the heat is for the bore to add. What the surface takes is added to `lost` [J].
  double* inwards(std::size_t stage, const GroupView& view, double& lost) const;

  /// All rings, once the innermost has its heat; `heat`: through the wall [W/m], [z].
  void outwards(std::size_t stage, const GroupView& view, const double* heat, double& lost) const;

  /// There are no macro-steps.
  void start_macro_step(const GroupView&, double&) const {}
  void end_macro_step(const GroupView&, bool, double&) const {}

 private:
  double* theta(const GroupView& view) const { return view.y + layout_.ground_row() * layout_.row(); }
  double lost(double part, const double* rises) const;

  StateLayout layout_;
  double step_;
  const RingKernels& kernels_;
  RadialFactors radial_;
  AxialFactors axial_;
  std::vector<unsigned char> uniform_run_;
  Vector inverse_of_layer_, carry_of_layer_, drop_of_layer_;
  Vector first_above_, first_below_, above_, below_;
  RingFactors factors_;
};

}  // namespace stillground::march::fused
