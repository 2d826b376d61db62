#pragma once

#include <cstddef>

#include "engine/march/multirate.hpp"
#include "engine/march/problem.hpp"

namespace stillground::march {

/// Doubles that a row of layers is padded to: eight fill an AVX-512 register or two of AVX2. At least one of them is
/// always free and stays zero, so that the layer "above the surface" and the one "below the bottom" may be read as
/// zero.
inline constexpr std::size_t lane = 8;

/// Where things lie in a State. Every row holds one quantity for all layers, z innermost, padded to `row()` doubles.
///
/// A group's block of State::y, row by row: the streams [K], those that go down (the temperature with which the fluid
/// leaves each cell downwards) before those that go up (leaving it upwards); inner and outer node of each mode [K];
/// then the ground's own rise theta [K], from the wall out. The in-bore rows stand first: the padding of the last of
/// them is the zero above the innermost ground row.
///
/// A group's block of State::amplitudes [K m2] (two rates only): the slow modes; the reduced modes that stand for them
/// within a macro-step; the quick modes; what axial conduction adds to each quick mode over a macro-step; what it adds
/// to the first reduced mode in a step; by how much that one is too high at the macro-step's end.
struct StateLayout {
  explicit StateLayout(const Problem& problem, const Multirate& multirate = {})
      : nr(problem.nr()),
        nz(problem.nz()),
        groups(problem.groups.size()),
        passes(problem.passes),
        slow_modes(multirate.slow.count) {}

  std::size_t nr;          ///< rings
  std::size_t nz;          ///< layers
  std::size_t groups;      ///< of equal bores
  std::size_t passes;      ///< of the fluid through a bore
  std::size_t slow_modes;  ///< 0: no amplitudes

  std::size_t row() const { return (nz / lane + 1) * lane; }  ///< doubles of a row with its padding

  std::size_t streams() const { return 2 * passes; }
  std::size_t down_row(std::size_t pass = 0) const { return pass; }
  std::size_t up_row(std::size_t pass = 0) const { return passes + pass; }
  std::size_t inner_row(std::size_t mode = 0) const { return streams() + 2 * mode; }
  std::size_t outer_row(std::size_t mode = 0) const { return streams() + 2 * mode + 1; }
  std::size_t ground_row() const { return 3 * streams(); }

  std::size_t block() const { return (ground_row() + nr) * row(); }  ///< doubles of one group in y
  std::size_t size() const { return groups * block(); }              ///< doubles of y

  std::size_t amplitude_rows() const {
    return slow_modes == 0 ? 0 : nr + Multirate::reduced_modes + (nr - slow_modes) + 2;
  }
  std::size_t amplitude_block() const { return amplitude_rows() * row(); }  ///< doubles of one group in amplitudes
};

}  // namespace stillground::march
