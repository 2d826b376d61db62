#pragma once

#include <Eigen/Core>
#include <vector>

#include "engine/screen/circuit.hpp"
#include "engine/screen/wall_history.hpp"

namespace stillground::screen {

/// A circuit at one flow.
struct CircuitAtFlow {
  bore::Network network;
  double heat_rate = 0;  ///< m c [W/K]; 0: the fluid stands
};

/// What its walls meet.
struct CircuitWalls {
  WallHistory history;                           ///< without heat so far
  std::vector<std::vector<double>> undisturbed;  ///< [instant of the run][piece], K
};

/// A few modes of a circuit's state (columns, orthonormal, [size][mode], without heat), of which what occurs in it is
/// made but for little: rest; the stored heat, so that none of it is lost from hour to hour however few there are; and
/// the strongest of what random hours of load and of rest leave behind (proper orthogonal
/// decomposition: Lumley 1967 [from memory]). `regimes`: the standing one first, then those at which fluid flows;
/// `step` [s] as of over_an_hour(); `count` > 2 of them, or as many as the state has entries.
Eigen::MatrixXd modes(const Circuit& circuit, const std::vector<CircuitAtFlow>& regimes, double step,
                      const CircuitWalls& walls, Eigen::Index count);

}  // namespace stillground::screen
