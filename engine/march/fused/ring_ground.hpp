#pragma once

#include <vector>

#include "engine/march/fused/kernels.hpp"
#include "engine/march/fused/site.hpp"
#include "engine/march/problem.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/state.hpp"

namespace stillground::march::fused {

/// The ground around the bores with one clock: every ring takes every step, axial conduction in every stage.
class RingGround {
 public:
  RingGround(const Problem& problem, const Kernels& kernels);

  /// The innermost ring per heat through the wall within a stage, [z] [K m/W].
  const Vector& wall_response() const { return radial_.wall_response(); }

  /// Rows of a site's scratch, and how many of the state's an hour changes: ground rows of y, amplitudes from `stepped`
  /// on, in which layers.
  std::size_t scratch_rows() const { return problem_.nr(); }
  std::size_t ground_rows() const { return problem_.nr(); }
  std::size_t stepped_rows() const { return 0; }
  double* stepped(const Site& site) const { return site.amplitudes; }
  Layers layers(const Group&) const { return {0, problem_.row()}; }

  /// The innermost ring within a stage (of those that go on without a break, from 0 on) as it would be without heat
  /// from the bore [z]; the heat is for the bore to add. What the surface takes is added to `lost` [J].
  double* inwards(std::size_t stage, const Site& site, double& lost) const;

  /// All rings, once the innermost has its heat; `heat`: through the wall [W/m], [z].
  void outwards(std::size_t stage, const Site& site, const double* heat, double& lost) const;

  /// The slow clock does not turn.
  void start_turn(const Site&, double&) const {}
  void end_turn(const Site&, bool, double&) const {}

 private:
  double* theta(const Site& site) const { return site.y + problem_.ground_row() * problem_.row(); }
  double lost(double part, const double* rises) const;

  const Problem& problem_;
  const RingKernels& kernels_;
  RadialFactors radial_;
  AxialFactors axial_;
  std::vector<unsigned char> alike_;
  Vector inverse_of_layer_, carry_of_layer_, drop_of_layer_;
  Vector first_above_, first_below_, above_, below_;
  RingFactors factors_;
};

}  // namespace stillground::march::fused
