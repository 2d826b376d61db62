#pragma once

#include <Eigen/Core>
#include <map>
#include <vector>

#include "engine/run/assembly.hpp"
#include "engine/screen/circuit.hpp"
#include "engine/screen/hour_map.hpp"

namespace stillground::screen {

/// A circuit's hour at any flow and fluid temperature. Made when first needed: whole ones at every second kelvin (the
/// film follows the temperature), from these by straight lines those an eighth of a kelvin apart, of which the nearest
/// is used.
class FlowMaps {
 public:
  FlowMaps(const run::Assembly& assembly, const CircuitShape& shape, const NearGround& ground);

  struct Flowing {
    HourMap map;
    double reynolds = 0;  ///< as of run::Film
  };

  const HourMap& standing() const { return standing_; }

  /// `part` of full flow, 0 < part <= 1; `temperature` of the fluid [K]. Holds until the next call.
  const Flowing& flowing(double part, double temperature);

  const Circuit& circuit() const { return circuit_; }
  const Eigen::MatrixXd& shapes() const { return shapes_; }  ///< [lasting][shape]

 private:
  /// All temperatures at one flow.
  struct Flow {
    std::map<long, Flowing> whole;           ///< by node
    std::vector<std::vector<Flowing>> fine;  ///< [node][between]
    long first = 0;                          ///< node that fine begins with
  };

  WholeMap whole(const run::Regimes::Regime& regime) const;
  const Flowing& at_node(double part, Flow& flow, long node);
  const Flowing& at(double part, double temperature);

  const run::Assembly& assembly_;
  Circuit circuit_;
  run::Regimes regimes_;  // in ground of one solid, the mean over the bores
  HourMap standing_;
  Eigen::MatrixXd shapes_;
  std::map<double, Flow> flows_;
  Flowing mixed_;
};

}  // namespace stillground::screen
