#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "engine/march/ambient.hpp"
#include "engine/march/bore_cache.hpp"
#include "engine/march/bore_elimination.hpp"
#include "engine/march/problem.hpp"
#include "engine/march/rates.hpp"
#include "engine/march/state_layout.hpp"
#include "engine/march/workers.hpp"

namespace stillground::march {

/// Solves one implicit stage of the whole field directly: Y = rhs + kappa f_I(t, Y), the loop closed within it.
/// Every group is eliminated down to one line, T_out = gain T_in + offset; the lines make the field's (loop::Circuits);
/// field and heat pumps agree in one scalar equation (loop::operating_point); every group follows from its inlet. The
/// bores' factors are built anew when the flow regime changes.
class StageSolver {
 public:
  /// `kappa`: gamma times the step [s]. of `multirate` only the update interval counts. `problem` and
  /// `workers` must outlive the solver.
  StageSolver(const Problem& problem, const Multirate& multirate, double kappa, Workers& workers);

  /// Solves in place: `block(g)` returns group g's block, holding rhs; it is left holding Y. Called from the workers'
  /// threads, `block(g)` before and `done(g)` after the solution. `time`: of the stage [s]; neighbours come from
  /// `state`.
  template <class Block, class Done>
  loop::OperatingPoint solve(const State& state, double time, const Forcing& forcing, Block&& block, Done&& done) {
    prepare(forcing);
    problem_.undisturbed.at(time, undisturbed_);
    workers_.each(problem_.groups.size(), [&](std::size_t g) { eliminate(g, state, time, blocks_[g] = block(g)); });
    const loop::OperatingPoint point = close(forcing);
    workers_.each(problem_.groups.size(), [&](std::size_t g) {
      substitute(g, point.lft, blocks_[g]);
      done(g);
    });
    return point;
  }

  /// Heat through the wall per height of each layer [W/m] at the last solution: [group][z] of row() entries.
  const Vector& wall_heat() const { return wall_heat_; }

 private:
  void prepare(const Forcing& forcing);
  void eliminate(std::size_t g, const State& state, double time, double* y);
  loop::OperatingPoint close(const Forcing& forcing);
  void substitute(std::size_t g, double lft, double* y);
  std::span<double> work_of(std::size_t g) {
    const std::size_t size = BoreElimination::work_size(layout_);
    return {work_.data() + g * size, size};
  }

  const Problem& problem_;
  Multirate multirate_;
  StateLayout layout_;
  double kappa_;
  Workers& workers_;
  RadialFactors radial_;
  BoreCache<BoreElimination> bores_;
  std::vector<double> undisturbed_;  // [z]
  std::vector<double*> blocks_;      // [group]
  Vector ambient_;                   // [group][z]
  Vector work_;                      // [group]
  Vector wall_heat_;
  loop::Circuits circuits_;
  std::vector<double> gain_, offset_;  // [group]: outlet per inlet, and at an inlet of 0 [K]
  std::vector<double> heat_rate_;      // [group]: of one bore [W/K]; 0: no flow, or not there
};

}  // namespace stillground::march
