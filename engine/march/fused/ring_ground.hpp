#pragma once

#include <vector>

#include "engine/march/fused/kernels.hpp"
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

  /// The innermost ring within a stage (of the hour, from 0 on) as it would be without heat from the bore [z]; the heat
  /// is for the bore to add. What the surface takes is added to `lost` [J].
  double* inwards(std::size_t stage, State& state, std::size_t g, double& lost);

  /// All rings, once the innermost has its heat; `heat`: through the wall [W/m], [z].
  void outwards(std::size_t stage, State& state, std::size_t g, const double* heat, double& lost);

  /// A day is like any other time.
  void start_day(State&, std::size_t, double&) {}
  void end_day(State&, std::size_t, double&) {}

 private:
  double* theta(State& state, std::size_t g) const {
    return state.y.data() + g * problem_.block() + problem_.ground_row() * problem_.row();
  }
  double* first_stage(std::size_t g) { return first_stage_.data() + g * problem_.nr() * problem_.row(); }
  double lost(double part, const double* rises) const;

  const Problem& problem_;
  const RingKernels& kernels_;
  RadialFactors radial_;
  AxialFactors axial_;
  std::vector<unsigned char> uniform_;
  Vector inverse_of_layer_, carry_of_layer_, drop_of_layer_;
  Vector first_above_, first_below_, above_, below_;
  RingFactors factors_;
  Vector first_stage_;  // [group][ring][z]
};

}  // namespace stillground::march::fused
