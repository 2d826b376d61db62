#pragma once

#include <memory>

#include "engine/march/problem.hpp"
#include "engine/march/state.hpp"
#include "engine/march/stepper.hpp"
#include "engine/march/workers.hpp"

namespace stillground::validation {

/// Marches a problem hour by hour as a run does (the engine's own stepper and refreshes), but at flows and networks
/// that the caller holds fixed, so that the march is linear in its loads, and with the state in sight.
class FixedFlowMarch {
 public:
  /// Starts at rest; `problem` must outlive it.
  FixedFlowMarch(const march::Problem& problem, const march::Multirate& multirate);

  /// One hour under `to_ground` [W] of the whole field.
  march::HourMeans hour(double to_ground, const march::FlowRegime& regime);

  const march::State& state() const { return state_; }

 private:
  const march::Problem& problem_;
  march::Multirate multirate_;
  march::Workers workers_{1};
  std::unique_ptr<march::Stepper> stepper_;
  march::State state_;
  march::Vector wall_heat_;
};

}  // namespace stillground::validation
