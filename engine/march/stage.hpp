#pragma once

#include <cstddef>
#include <map>
#include <vector>

#include "engine/march/ambient.hpp"
#include "engine/march/bore_factors.hpp"
#include "engine/march/problem.hpp"
#include "engine/march/rates.hpp"
#include "engine/march/workers.hpp"

namespace stillground::march {

/// Solves one implicit stage of the whole field directly: Y = rhs + kappa f_I(t, Y), the loop closed within it.
/// Every group is eliminated down to one line, outlet = gain inlet + offset; field and heat pumps meet in one scalar
/// equation; every group follows from its inlet. The factors of a flow regime are built when it is first met and kept.
class StageSolver {
 public:
  /// `kappa`: gamma times the step [s]. `problem` and `workers` must outlive the solver.
  StageSolver(const Problem& problem, double kappa, Workers& workers);

  /// Solves in place: `block(g)` returns group g's block, holding rhs; it is left holding Y. Called from the workers'
  /// threads, `block(g)` before and `done(g)` after the solution. `time`: of the stage [s]; neighbours come from
  /// `state`.
  template <class Block, class Done>
  loop::Meeting solve(const State& state, double time, const Task& task, Block&& block, Done&& done) {
    const std::vector<BoreFactors>& bores = factors(task);
    problem_.undisturbed.at(time, undisturbed_);
    workers_.each(problem_.groups.size(),
                  [&](std::size_t g) { eliminate(g, bores[g], state, time, blocks_[g] = block(g)); });
    const loop::Meeting meeting = close(bores, task);
    workers_.each(problem_.groups.size(), [&](std::size_t g) {
      substitute(g, bores[g], meeting.lft, blocks_[g]);
      done(g);
    });
    return meeting;
  }

  /// Heat through the wall per height of each layer [W/m] at the last solution: [group][z] of row() entries.
  const Vector& wall_heat() const { return wall_heat_; }

 private:
  const std::vector<BoreFactors>& factors(const Task& task);
  void eliminate(std::size_t g, const BoreFactors& bore, const State& state, double time, double* y);
  loop::Meeting close(const std::vector<BoreFactors>& bores, const Task& task) const;
  void substitute(std::size_t g, const BoreFactors& bore, double inlet, double* y);

  const Problem& problem_;
  double kappa_;
  Workers& workers_;
  RadialFactors radial_;
  std::map<const FlowRegime*, std::vector<BoreFactors>> factors_;
  std::vector<double> undisturbed_;  // [z]
  std::vector<double*> blocks_;      // [group]
  Vector ambient_;                   // [group][z]
  Vector work_;                      // [group]
  Vector wall_heat_;
  std::vector<double> offset_;  // [group]
};

}  // namespace stillground::march
