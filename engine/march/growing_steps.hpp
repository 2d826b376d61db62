#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "engine/march/axial_solver.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/stage.hpp"

namespace stillground::march {

/// Marches a problem under one constant forcing by ARS(2,2,2) with steps that grow with the time gone by: decades in
/// thousands of steps or fewer. The engine's own stage solver, axial operator and neighbours' sum (which is formed at
/// least every update interval); only the steps are others than those of a run.
class GrowingSteps {
 public:
  /// How axial conduction is marched: explicitly, or implicitly by approximate factors, which bears any step.
  enum class Axial { explicitly, by_factors };

  /// `problem` and `forcing` must outlive it; `state` starts at time 0. Of `multirate` only the update interval counts.
  GrowingSteps(const Problem& problem, const Multirate& multirate, const Forcing& forcing, State state,
               Axial axial = Axial::explicitly);

  /// Goes on to each of `times` [s] (rising), hit exactly, and calls at(time) there. Steps are `part` of the time gone
  /// by, 0 < part < 1, between `first_step` and `longest_step` [s]; the caller keeps the latter within what the
  /// axial conduction bears where it is explicit (ground::stiffest_axial_rate).
  void march(const std::vector<double>& times, double first_step, double longest_step,
             const std::function<void(double)>& at, double part = 0.02);

  const State& state() const { return state_; }
  const loop::OperatingPoint& operating_point() const { return point_; }  ///< at the end of the last step
  const Vector& wall_heat() const { return solver_->wall_heat(); }  ///< the same [W/m], [group][z]; after a first step

  GrowingSteps(const GrowingSteps&) = delete;
  GrowingSteps& operator=(const GrowingSteps&) = delete;

 private:
  void step(double h);
  template <class Solve>
  void explicit_step(double h, Solve&& solve);
  template <class Solve>
  void factored_step(double h, Solve&& solve);
  void axial_rate(const Vector& y, Vector& rate) const;
  void factor_out(double kappa, const double* from, double* y);

  const Problem& problem_;
  Multirate multirate_;
  StateLayout layout_;
  const Forcing& forcing_;
  State state_;
  Workers workers_{1};
  AxialFactors axial_;
  std::optional<AxialSolver> implicit_;  // where axial conduction is
  std::optional<StageSolver> solver_;    // of steps of solved_ [s]
  double solved_ = 0;
  Vector first_rate_, second_rate_, known_, stage_;
  loop::OperatingPoint point_;
};

}  // namespace stillground::march
