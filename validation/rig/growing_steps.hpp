#pragma once

#include <functional>
#include <vector>

#include "engine/march/problem.hpp"
#include "engine/march/rates.hpp"
#include "engine/march/state.hpp"

namespace stillground::validation {

/// Marches a problem under one constant task by ARS(2,2,2) with steps of a fiftieth of the time gone by, between
/// `first_step` and `longest_step` [s]: decades in thousands of steps. The engine's own stage solver, axial operator
/// and neighbours' sum (which is formed at least every problem.refresh); only the clock is another than that of a run.
class GrowingSteps {
 public:
  /// `problem` and `task` must outlive it; `state` starts at time 0.
  GrowingSteps(const march::Problem& problem, const march::Task& task, march::State state);

  /// Goes on to each of `times` [s] (rising), hit exactly, and calls at(time) there.
  void march(const std::vector<double>& times, double first_step, double longest_step,
             const std::function<void(double)>& at);

  const march::State& state() const { return state_; }
  const loop::Meeting& meeting() const { return meeting_; }  ///< at the end of the last step
  const march::Vector& wall_heat() const { return heat_; }   ///< at the end of the last step [W/m], [group][z]

 private:
  void step(double h);

  const march::Problem& problem_;
  const march::Task& task_;
  march::State state_;
  march::Vector heat_;
  loop::Meeting meeting_;
};

}  // namespace stillground::validation
