#pragma once

#include <cstddef>
#include <vector>

#include "engine/march/ambient.hpp"
#include "engine/march/bore_factors.hpp"
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
    const std::vector<BoreFactors>& bores = factors(*task.regime);
    problem_.undisturbed.at(time, undisturbed_);
    workers_.each(problem_.groups.size(),
                  [&](std::size_t g) { eliminate(g, bores[shape_[g]], state, time, blocks_[g] = block(g)); });
    const loop::Meeting meeting = close(bores, task);
    workers_.each(problem_.groups.size(), [&](std::size_t g) {
      substitute(g, bores[shape_[g]], meeting.lft, blocks_[g]);
      done(g);
    });
    return meeting;
  }

  /// Heat through the wall per height of each layer [W/m] at the last solution: [group][z] of row() entries.
  const Vector& wall_heat() const { return wall_heat_; }

 private:
  const std::vector<BoreFactors>& factors(const FlowRegime& regime);
  void eliminate(std::size_t g, const BoreFactors& bore, const State& state, double time, double* y);
  loop::Meeting close(const std::vector<BoreFactors>& bores, const Task& task) const;
  void substitute(std::size_t g, const BoreFactors& bore, double inlet, double* y);

  const Problem& problem_;
  double kappa_;
  Workers& workers_;
  RadialFactors radial_;
  std::vector<std::size_t> shape_;   // [group]: groups whose bores fill the same layers share their factors
  std::vector<std::size_t> models_;  // [shape]: a group of that shape
  std::vector<BoreFactors> bores_;   // [shape], of the regime last met
  long serial_ = -1;                 // its serial
  std::vector<double> undisturbed_;  // [z]
  std::vector<double*> blocks_;      // [group]
  Vector ambient_;                   // [group][z]
  Vector work_;                      // [group]
  Vector wall_heat_;
  std::vector<double> offset_;  // [group]
};

}  // namespace stillground::march
