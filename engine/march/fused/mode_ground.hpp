#pragma once

#include <vector>

#include "engine/march/fused/kernels.hpp"
#include "engine/march/problem.hpp"
#include "engine/march/radial_modes.hpp"
#include "engine/march/state.hpp"

namespace stillground::march::fused {

/// The ground around the bores with two clocks: in each layer the radial modes' amplitudes (RadialModes) take the place
/// of the rings' temperatures. To the wall's heat they answer each by itself, x_m' = -alpha lambda_m x_m + q/(rho c),
/// so that a stage is two sums over modes and no elimination. The quick modes take every step; the slow ones step once
/// a day, and in between a few stand-ins (StandIns) take their place. Axial conduction steps once a day too (or as
/// often as it must to be stable): from mode to mode nothing flows.
class ModeGround {
 public:
  ModeGround(const Problem& problem, const Kernels& kernels);

  // As RingGround has them. Of the rings' temperatures only the innermost is kept up to date within the day.
  const Vector& wall_response() const { return wall_response_; }
  double* inwards(std::size_t stage, State& state, std::size_t g, double& lost);
  void outwards(std::size_t stage, State& state, std::size_t g, const double* heat, double& lost);

  /// The slow clock's step: the slow modes, axial conduction, the rings' temperatures.
  void start_day(State& state, std::size_t g, double& lost);
  void end_day(State& state, std::size_t g, double& lost);

 private:
  /// Layers [from, past), whole eights, that group g's bore is in.
  struct Layers {
    std::size_t from, past;
  };
  Layers layers(std::size_t g) const;
  double* amplitudes(State& state, std::size_t g) const;
  double* stepped(State& state, std::size_t g) const { return amplitudes(state, g) + problem_.clocks.slow * row_; }
  double* scratch(std::size_t g, std::size_t which) { return scratch_.data() + (3 * g + which) * row_; }
  void fill_modes(const RadialModes& modes, const StandIns& stand_ins);
  void fill_day(const RadialModes& modes, const StandIns& stand_ins);

  const Problem& problem_;
  const ModeKernels& kernels_;
  std::size_t row_, stages_;
  Vector wall_response_, second_wall_, per_heat_;
  std::vector<unsigned char> alike_;
  std::vector<double> of_layer_, share_, start_, shape_, weight_;
  std::vector<std::size_t> reaches_;
  Vector of_mode_, keeps_, steady_, above_, below_;
  double through_surface_;  // heat per temperature of the topmost layer in an axial step [J/(m2 K)]
  ModeFactors modes_;
  DayFactors day_;
  Vector scratch_;  // [group]: what was read for the first stage, for the second, the first stage's heat
};

}  // namespace stillground::march::fused
