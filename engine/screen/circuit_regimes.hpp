#pragma once

#include "engine/assembly/assembly.hpp"
#include "engine/screen/modes.hpp"

namespace stillground::screen {

/// The network of the circuit that stands for all at any flow: in ground of one solid, the mean over the bores. As
/// assembly::FlowRegimes, but of a U's legs with multipole solutions at the very films asked for: regimes are few here,
/// and variants of one bore ask for the same ones again.
class CircuitRegimes {
 public:
  /// `assembly` must outlive it.
  explicit CircuitRegimes(const assembly::Assembly& assembly);

  struct Regime {
    CircuitAtFlow circuit;
    double reynolds = 0;  ///< as of bore::PipeFlow
  };

  /// Of fluid at `temperature` [K] that flows at `flow` [kg/s] through a bore; 0: it stands.
  Regime at(double temperature, double flow) const;

 private:
  const assembly::Assembly& assembly_;
  model::Solid ground_;
};

}  // namespace stillground::screen
