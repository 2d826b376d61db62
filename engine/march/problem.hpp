#pragma once

#include <cstddef>
#include <utility>
#include <vector>

#include "engine/bore/network.hpp"
#include "engine/field/coupling.hpp"
#include "engine/ground/grid.hpp"
#include "engine/ground/undisturbed.hpp"
#include "engine/loop/closure.hpp"

namespace stillground::march {

/// Doubles that a row of layers is padded to: eight fill an AVX-512 register or two of AVX2. At least one of them is
/// always free and stays zero, so that the layer "above the surface" and the one "below the bottom" may be read as
/// zero.
inline constexpr std::size_t lane = 8;

/// One group of equal bores.
struct Group {
  std::vector<double> fraction;  ///< [z]: part of the cell's height that the bore fills, 0..1
  std::size_t first = 0;         ///< first layer with a bore in it
  std::size_t past = 0;          ///< one past the last
  double members = 1;            ///< bores it stands for
  std::size_t upstream = none;  ///< the group whose outlets are its inlets, with a lower index; none: the field's inlet
  bool returns = true;          ///< its outlets go back to the heat pumps

  static constexpr std::size_t none = static_cast<std::size_t>(-1);
};

/// A flow through the bores and the networks that hold at it.
struct FlowRegime {
  long serial = 0;                      ///< regimes of one run with equal serials are equal
  double heat_rate = 0;                 ///< mass flow times specific heat of ONE bore [W/K]; 0: the fluid stands
  std::vector<bore::Network> networks;  ///< one for each kind of ground
  std::vector<std::size_t> of_layer;    ///< [z]: which of the networks

  const bore::Network& network(std::size_t k) const { return networks[of_layer[k]]; }
};

/// A regime in which every layer has a network of its own, [z].
inline FlowRegime layer_by_layer(long serial, double heat_rate, std::vector<bore::Network> networks) {
  FlowRegime regime{serial, heat_rate, std::move(networks), {}};
  for (std::size_t k = 0; k < regime.networks.size(); ++k) regime.of_layer.push_back(k);
  return regime;
}

/// How often what happens in the ground is stepped. The daily wave dies away within decimetres: of the modes in which
/// heat spreads from ring to ring (RadialModes) only the quick ones answer within hours. The `slow` ones are stepped
/// once a turn of some hours, and so is axial conduction, in `axial_steps` steps half a turn.
struct Clocks {
  static constexpr int slow_hours = 6;                      ///< a turn of the slow clock; divides a day
  static constexpr double slow_step = slow_hours * 3600.0;  ///< [s]
  static constexpr std::size_t stand_ins = 5;  ///< that stand for the slow modes within a turn, see StandIns

  std::size_t slow = 0;  ///< modes; 0: one clock for all
  int axial_steps = 1;

  bool two() const { return slow > 0; }

  /// Rows of a group's amplitudes on a grid of nr rings, see State.
  std::size_t amplitudes(std::size_t nr) const { return nr + stand_ins + (nr - slow) + 2; }
};

/// Everything the march needs: numbers only, const for a whole run, shared by all threads.
struct Problem {
  ground::Grid grid;
  std::vector<double> axial;  ///< conductances per area at the layers' faces, nz + 1 [W/(m2 K)]
  std::vector<Group> groups;
  field::Coupling coupling;
  ground::Undisturbed undisturbed;
  loop::HeatPumps pumps;
  double step = 1800;      ///< [s]
  double refresh = 86400;  ///< of the neighbours' sum [s]
  std::size_t passes = 1;  ///< of the fluid through a bore: U's one after the other
  Clocks clocks = {};

  std::size_t nr() const { return grid.nr(); }
  std::size_t nz() const { return grid.nz(); }
  std::size_t row() const { return (grid.nz() / lane + 1) * lane; }  ///< doubles of a row of layers with its padding

  // Rows of a group's block of the state, each row() long with the layers z innermost: the streams, those that go down
  // (leaving each cell downwards) before those that go up (leaving it upwards), inner and outer node of each mode [K],
  // then nr rows of the ground's own rise theta [K], from the wall out. The in-bore rows stand first: the padding of
  // the last of them is the zero above the innermost ground row.
  std::size_t streams() const { return 2 * passes; }
  std::size_t down_row(std::size_t pass = 0) const { return pass; }
  std::size_t up_row(std::size_t pass = 0) const { return passes + pass; }
  std::size_t inner_row(std::size_t mode = 0) const { return streams() + 2 * mode; }
  std::size_t outer_row(std::size_t mode = 0) const { return streams() + 2 * mode + 1; }
  std::size_t ground_row() const { return 3 * streams(); }
  std::size_t block() const { return (ground_row() + grid.nr()) * row(); }  ///< doubles of one group
  std::size_t size() const { return groups.size() * block(); }              ///< doubles of the field
  double bores() const;                                                     ///< all groups' members
};

inline double Problem::bores() const {
  double sum = 0;
  for (const Group& group : groups) sum += group.members;
  return sum;
}

}  // namespace stillground::march
