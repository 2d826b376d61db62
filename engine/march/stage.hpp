#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "engine/march/ambient.hpp"
#include "engine/march/bore_factors.hpp"
#include "engine/march/made_for_bores.hpp"
#include "engine/march/problem.hpp"
#include "engine/march/rates.hpp"
#include "engine/march/workers.hpp"

namespace stillground::march {

/// Solves one implicit stage of the whole field directly: Y = rhs + kappa f_I(t, Y), the loop closed within it.
/// Every group is eliminated down to one line, outlet = gain inlet + offset; field and heat pumps meet in one scalar
/// equation; every group follows from its inlet. The bores' factors are built anew when the flow regime changes.
class StageSolver {
 public:
  /// `kappa`: gamma times the step [s]. `problem` and `workers` must outlive the solver.
  StageSolver(const Problem& problem, double kappa, Workers& workers);

  /// Solves in place: `block(g)` returns group g's block, holding rhs; it is left holding Y. Called from the workers'
  /// threads, `block(g)` before and `done(g)` after the solution. `time`: of the stage [s]; neighbours come from
  /// `state`.
  template <class Block, class Done>
  loop::Meeting solve(const State& state, double time, const Task& task, Block&& block, Done&& done) {
    prepare(task);
    problem_.undisturbed.at(time, undisturbed_);
    workers_.each(problem_.groups.size(), [&](std::size_t g) { eliminate(g, state, time, blocks_[g] = block(g)); });
    const loop::Meeting meeting = close(task);
    workers_.each(problem_.groups.size(), [&](std::size_t g) {
      substitute(g, meeting.lft, blocks_[g]);
      done(g);
    });
    return meeting;
  }

  /// Heat through the wall per height of each layer [W/m] at the last solution: [group][z] of row() entries.
  const Vector& wall_heat() const { return wall_heat_; }

 private:
  void prepare(const Task& task);
  void eliminate(std::size_t g, const State& state, double time, double* y);
  loop::Meeting close(const Task& task);
  void substitute(std::size_t g, double lft, double* y);
  std::span<double> work_of(std::size_t g) {
    const std::size_t size = BoreFactors::work_size(problem_);
    return {work_.data() + g * size, size};
  }

  const Problem& problem_;
  double kappa_;
  Workers& workers_;
  RadialFactors radial_;
  MadeForBores<BoreFactors> bores_;
  std::vector<double> undisturbed_;  // [z]
  std::vector<double*> blocks_;      // [group]
  Vector ambient_;                   // [group][z]
  Vector work_;                      // [group]
  Vector wall_heat_;
  std::vector<double> offset_;  // [group]: of the bore alone, then from the field's inlet on
  std::vector<double> gain_;    // [group]: from the field's inlet on
};

}  // namespace stillground::march
