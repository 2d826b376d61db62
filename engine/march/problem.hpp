#pragma once

#include <cstddef>
#include <utility>
#include <vector>

#include "engine/bore/network.hpp"
#include "engine/field/coupling.hpp"
#include "engine/ground/grid.hpp"
#include "engine/ground/undisturbed.hpp"
#include "engine/loop/circuits.hpp"
#include "engine/loop/closure.hpp"

namespace stillground::march {

/// One group of equal bores: a link of its circuit (upstream, returns, members), in the ground.
struct Group : loop::Link {
  std::vector<double> fraction;  ///< [z]: part of the cell's height that the bore fills, 0..1
  std::size_t first = 0;         ///< first layer with a bore in it
  std::size_t end = 0;           ///< one past the last
};

/// A flow through the bores and the networks that hold at it.
struct FlowRegime {
  long version = 0;                     ///< regimes of one run with equal versions are equal
  double heat_rate = 0;                 ///< mass flow times specific heat of ONE bore [W/K]; 0: stagnant fluid
  std::vector<bore::Network> networks;  ///< one for each kind of ground
  std::vector<std::size_t> of_layer;    ///< [z]: which of the networks

  const bore::Network& network(std::size_t k) const { return networks[of_layer[k]]; }
};

/// A regime in which every layer has a network of its own, [z].
inline FlowRegime layer_by_layer(long version, double heat_rate, std::vector<bore::Network> networks) {
  FlowRegime regime{version, heat_rate, std::move(networks), {}};
  for (std::size_t k = 0; k < regime.networks.size(); ++k) regime.of_layer.push_back(k);
  return regime;
}

/// What is solved: numbers only, const for a whole run, shared by all threads. How it is stepped: Multirate; where its
/// unknowns lie: StateLayout.
struct Problem {
  ground::Grid grid;
  std::vector<double> axial;  ///< conductances per area at the layers' faces, nz + 1 [W/(m2 K)]
  std::vector<Group> groups;
  field::Coupling coupling;
  ground::Undisturbed undisturbed;
  loop::HeatPumps pumps;
  std::size_t passes = 1;  ///< of the fluid through a bore: U's one after the other

  std::size_t nr() const { return grid.nr(); }
  std::size_t nz() const { return grid.nz(); }
  std::size_t streams() const { return 2 * passes; }  ///< down and up each pass
  double bores() const;                               ///< all groups' members
};

inline double Problem::bores() const {
  double sum = 0;
  for (const Group& group : groups) sum += group.members;
  return sum;
}

}  // namespace stillground::march
