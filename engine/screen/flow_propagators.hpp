#pragma once

#include <Eigen/Core>
#include <array>
#include <map>
#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/screen/circuit.hpp"
#include "engine/screen/circuit_regimes.hpp"
#include "engine/screen/hourly_propagator.hpp"
#include "engine/screen/modes.hpp"

namespace stillground::screen {

/// A circuit's hour at any flow and fluid temperature. Made when first needed: whole ones at nodes four kelvin apart
/// (the film follows the temperature), from these by straight lines those an eighth of a kelvin apart, of which the
/// nearest is used; flows that follow the load lie between nodes a tenth apart. Where a film changes by more than a
/// tenth between two nodes, as between laminar and turbulent flow, more stand between them: seven, of flows three.
class FlowPropagators {
 public:
  FlowPropagators(const assembly::Assembly& assembly, const CircuitShape& shape, const NearGround& ground,
                  const CircuitWalls& walls);

  /// An hour is the sum of two propagators', each times its part.
  struct Flowing {
    std::array<const HourlyPropagator*, 2> propagator{};
    std::array<double, 2> part{1, 0};  ///< the second is none where its part is 0
    double reynolds = 0;               ///< as of assembly::Film
  };

  const HourlyPropagator& standing() const { return standing_; }

  /// `part` of full flow, 0 < part <= 1; `temperature` of the fluid [K]. Holds until the next call.
  Flowing flowing(double part, double temperature);

  const Circuit& circuit() const { return circuit_; }
  const Eigen::MatrixXd& modes() const { return modes_; }  ///< [size][mode]
  HourlyPropagator::Places places() const;

 private:
  struct Node {
    HourlyPropagator propagator;
    double reynolds = 0;
  };
  /// All temperatures at one flow. Places count eighths of a node's distance.
  struct Flow {
    double part = 1;
    std::map<long, double> films;         ///< [node's place] [K m/W]
    std::map<long, Node> whole;           ///< [node's place]
    std::vector<std::vector<Node>> fine;  ///< [node - first][between]
    long first = 0;
  };

  HourlyPropagator made(const CircuitAtFlow& at) const;
  double film(Flow& flow, long place) const;
  const Node& at_node(Flow& flow, long place);
  void fill(Flow& flow, long node, std::vector<Node>& fine);
  const Node& at(Flow& flow, double temperature);
  Flow& flow_at(long place);
  bool bends_between_flows(long node, double temperature);

  const assembly::Assembly& assembly_;
  Circuit circuit_;
  CircuitRegimes regimes_;
  Eigen::MatrixXd modes_;
  HourlyPropagator standing_;
  std::map<double, Flow> stages_;  // [part]
  std::map<long, Flow> nodes_;     // [quarters of between_flows]
};

}  // namespace stillground::screen
