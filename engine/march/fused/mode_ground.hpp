#pragma once

#include <vector>

#include "engine/march/fused/kernels.hpp"
#include "engine/march/fused/site.hpp"
#include "engine/march/problem.hpp"
#include "engine/march/radial_modes.hpp"
#include "engine/march/state.hpp"

namespace stillground::march::fused {

/// The ground around the bores with two clocks: in each layer the radial modes' amplitudes (RadialModes) take the place
/// of the rings' temperatures. To the wall's heat they answer each by itself, x_m' = -alpha lambda_m x_m + q/(rho c),
/// so that a stage is two sums over modes and no elimination. The quick modes take every step; the slow ones step once
/// a turn, and in between a few stand-ins (StandIns) take their place. Axial conduction steps once a turn too (or as
/// often as it must to be stable): from mode to mode nothing flows.
class ModeGround {
 public:
  ModeGround(const Problem& problem, const Kernels& kernels);

  // As RingGround has them. Of the rings' temperatures only the innermost is kept up to date within the day.
  const Vector& wall_response() const { return wall_response_; }
  std::size_t scratch_rows() const { return 3; }
  std::size_t ground_rows() const { return 1; }
  std::size_t stepped_rows() const { return modes_.modes; }
  double* stepped(const Site& site) const { return site.amplitudes + problem_.clocks.slow * row_; }
  Layers layers(const Group& group) const;  ///< that the bore is in
  double* inwards(std::size_t stage, const Site& site, double& lost) const;
  void outwards(std::size_t stage, const Site& site, const double* heat, double& lost) const;

  /// The slow clock's step: the slow modes, axial conduction, at midnight the rings' temperatures.
  void start_turn(const Site& site, double& lost) const;
  void end_turn(const Site& site, bool midnight, double& lost) const;

 private:
  /// What was read for the first stage, for the second, the first stage's heat.
  double* scratch(const Site& site, std::size_t which) const { return site.scratch + which * row_; }
  double* innermost(const Site& site) const { return site.y + problem_.ground_row() * row_; }
  void fill_modes(const RadialModes& modes, const StandIns& stand_ins);
  void fill_turn(const RadialModes& modes, const StandIns& stand_ins);

  const Problem& problem_;
  const ModeKernels& kernels_;
  std::size_t row_;
  Vector wall_response_, second_wall_, per_heat_;
  std::vector<unsigned char> alike_;
  std::vector<double> of_layer_, share_, start_, shape_, weight_;
  std::vector<std::size_t> reaches_;
  Vector of_mode_, keeps_, steady_, above_, below_;
  double through_surface_;  // heat per temperature of the topmost layer in an axial step [J/(m2 K)]
  ModeFactors modes_;
  TurnFactors turn_;
};

}  // namespace stillground::march::fused
