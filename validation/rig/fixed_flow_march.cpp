#include "validation/rig/fixed_flow_march.hpp"

#include "engine/march/ambient.hpp"
#include "engine/march/arkode/stepper.hpp"
#include "engine/simulation/observe.hpp"

namespace stillground::validation {

FixedFlowMarch::FixedFlowMarch(const march::Problem& problem)
    : problem_(problem),
      stepper_(march::make_arkode_stepper(problem, workers_)),
      state_(simulation::initial_state(problem)),
      wall_heat_(problem.groups.size() * problem.row()) {}

march::HourMeans FixedFlowMarch::hour(double to_ground, const march::FlowRegime& regime) {
  if (march::refresh_due(problem_, state_)) march::refresh_neighbours(problem_, state_, workers_);
  return stepper_->advance(state_, {{0, 0, 0, to_ground}, &regime}, wall_heat_);
}

}  // namespace stillground::validation
