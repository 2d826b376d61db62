#pragma once

#include <cstddef>
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
};

/// A flow through the bores and the networks that hold at it.
struct FlowRegime {
  long serial = 0;                      ///< regimes of one run with equal serials are equal
  double heat_rate = 0;                 ///< mass flow times specific heat of ONE bore [W/K]; 0: the fluid stands
  std::vector<bore::Network> networks;  ///< [z]
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

  std::size_t nr() const { return grid.nr(); }
  std::size_t nz() const { return grid.nz(); }
  std::size_t row() const { return (grid.nz() / lane + 1) * lane; }  ///< doubles of a row of layers with its padding
  std::size_t block() const;                                         ///< doubles of one group
  std::size_t size() const { return groups.size() * block(); }       ///< doubles of the field
  double bores() const;                                              ///< all groups' members
};

/// Rows of a group's block of the state, each `row()` long with the layers z innermost: fluid down (leaving each cell
/// downwards) and up (leaving it upwards), the inner and outer node of the even and the odd mode [K], then nr rows of
/// the ground's own rise theta [K], from the wall out. The in-bore rows stand first: the padding of the last of them is
/// the zero above the innermost ground row.
namespace rows {
inline constexpr std::size_t down = 0, up = 1, even_inner = 2, even_outer = 3, odd_inner = 4, odd_outer = 5, ground = 6;
}

inline std::size_t Problem::block() const {
  return (rows::ground + grid.nr()) * row();
}

inline double Problem::bores() const {
  double sum = 0;
  for (const Group& group : groups) sum += group.members;
  return sum;
}

}  // namespace stillground::march
