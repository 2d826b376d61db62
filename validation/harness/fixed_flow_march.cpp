#include "validation/harness/fixed_flow_march.hpp"

#include "engine/march/ambient.hpp"
#include "engine/march/arkode/stepper.hpp"
#include "engine/march/state_layout.hpp"
#include "engine/simulation/observe.hpp"

namespace stillground::validation {

FixedFlowMarch::FixedFlowMarch(const march::Problem& problem, const march::Multirate& multirate)
    : problem_(problem),
      multirate_(multirate),
      stepper_(march::make_arkode_stepper(problem, multirate, workers_)),
      state_(simulation::initial_state(problem, multirate)),
      wall_heat_(problem.groups.size() * march::StateLayout(problem).row()) {}

march::HourMeans FixedFlowMarch::hour(double to_ground, const march::FlowRegime& regime) {
  if (march::update_due(problem_, multirate_, state_)) {
    march::update_neighbours(problem_, multirate_, state_, workers_);
  }
  return stepper_->advance(state_, {{0, 0, 0, to_ground}, &regime}, wall_heat_);
}

}  // namespace stillground::validation
