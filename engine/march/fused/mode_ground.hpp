#pragma once

#include <vector>

#include "engine/march/fused/group_view.hpp"
#include "engine/march/fused/kernels.hpp"
#include "engine/march/problem.hpp"
#include "engine/march/radial_modes.hpp"
#include "engine/march/state.hpp"
#include "engine/march/state_layout.hpp"

namespace stillground::march::fused {

/// The ground around the bores at two rates: in each layer the radial modes' amplitudes (RadialModes) take the place of
/// the rings' temperatures. Each responds to the wall's heat by itself,
///   x_m' = -alpha lambda_m x_m + q/(rho c),   theta_wall = sum_m w_m x_m,
/// so that a stage is two sums over modes and no elimination. The quick modes take every step; the slow ones one a
/// macro-step, and in between a few reduced modes (ReducedModes) take their place. Axial conduction is stepped once a
/// macro-step too (or as often as it must to be stable): from mode to mode nothing flows.
class ModeGround {
 public:
  ModeGround(const Problem& problem, const Multirate& multirate, const Kernels& kernels);

  // As RingGround has them. Of the rings' temperatures only the innermost is kept up to date within the day.
  const Vector& wall_response() const { return wall_response_; }
  std::size_t scratch_rows() const { return 3; }
  std::size_t ground_rows() const { return 1; }
  std::size_t stepped_rows() const { return modes_.modes; }
  double* stepped(const GroupView& view) const { return view.amplitudes + layout_.slow_modes * row_; }
  LayerRange layers(const Group& group) const;  ///< that the bore is in
  double* inwards(std::size_t stage, const GroupView& view, double& lost) const;
  void outwards(std::size_t stage, const GroupView& view, const double* heat, double& lost) const;

  /// The macro-step: the slow modes, axial conduction, at midnight the rings' temperatures.
  void start_macro_step(const GroupView& view, double& lost) const;
  void end_macro_step(const GroupView& view, bool midnight, double& lost) const;

 private:
  /// What was read for the first stage, for the second, the first stage's heat.
  double* scratch(const GroupView& view, std::size_t which) const { return view.scratch + which * row_; }
  double* innermost(const GroupView& view) const { return view.y + layout_.ground_row() * row_; }
  void fill_modes(const RadialModes& modes, const ReducedModes& reduced_modes);
  void fill_macro_step(const RadialModes& modes, const ReducedModes& reduced_modes);

  const Problem& problem_;
  StateLayout layout_;
  double step_;
  int axial_steps_;
  const ModeKernels& kernels_;
  const MacroStepKernels& macro_kernels_;
  std::size_t row_;
  Vector wall_response_, second_wall_, per_heat_;
  std::vector<unsigned char> uniform_run_;
  std::vector<double> of_layer_, share_, start_, shape_, weight_;
  std::vector<std::size_t> active_modes_;
  Vector of_mode_, decay_, steady_, above_, below_;
  double through_surface_;  // heat per temperature of the topmost layer in an axial step [J/(m2 K)]
  ModeFactors modes_;
  MacroStepFactors macro_;
};

}  // namespace stillground::march::fused
