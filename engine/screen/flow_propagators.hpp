#pragma once

#include <Eigen/Core>
#include <map>
#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/screen/circuit.hpp"
#include "engine/screen/hourly_propagator.hpp"

namespace stillground::screen {

/// A circuit's hour at any flow and fluid temperature. Made when first needed: whole ones at every second kelvin (the
/// film follows the temperature), from these by straight lines those an eighth of a kelvin apart, of which the nearest
/// is used.
class FlowPropagators {
 public:
  FlowPropagators(const assembly::Assembly& assembly, const CircuitShape& shape, const NearGround& ground);

  struct Flowing {
    HourlyPropagator propagator;
    double reynolds = 0;  ///< as of assembly::Film
  };

  const HourlyPropagator& standing() const { return standing_; }

  /// `part` of full flow, 0 < part <= 1; `temperature` of the fluid [K]. Holds until the next call.
  const Flowing& flowing(double part, double temperature);

  const Circuit& circuit() const { return circuit_; }
  const Eigen::MatrixXd& modes() const { return modes_; }  ///< [lasting][mode]

 private:
  /// All temperatures at one flow.
  struct Flow {
    std::map<long, Flowing> whole;           ///< by node
    std::vector<std::vector<Flowing>> fine;  ///< [node][between]
    long first = 0;                          ///< node that fine begins with
  };

  FullPropagator whole(const assembly::FlowRegimes::Regime& regime) const;
  const Flowing& at_node(double part, Flow& flow, long node);
  const Flowing& at(double part, double temperature);

  const assembly::Assembly& assembly_;
  Circuit circuit_;
  assembly::FlowRegimes regimes_;  // in ground of one solid, the mean over the bores
  HourlyPropagator standing_;
  Eigen::MatrixXd modes_;
  std::map<double, Flow> flows_;
  Flowing mixed_;
};

}  // namespace stillground::screen
