#pragma once

#include <cstddef>

/// The fast stepper's inner loops. Every array is rows of `row` doubles with the layers z innermost, aligned to 64
/// bytes, row a multiple of eight; see march::Problem for the rows of a block. No other header is included here: the
/// kernels are compiled once for each instruction set, and nothing that is shared with the rest of the program may be
/// compiled with instructions that the machine may lack.
namespace stillground::march::fused {

/// Rings that are stepped at one clock: the radial factors of an implicit stage (RadialFactors) and axial conduction
/// (AxialFactors) times the step. The radial factors depend on a layer's ground alone, so that a pack of layers of one
/// ground reads one number for all of them: memory, not arithmetic, is what the kernels wait for.
struct RingFactors {
  std::size_t rings = 0;
  std::size_t row = 0;
  const unsigned char* uniform = nullptr;    ///< [pack]: whether its layers are of one ground
  const double* inverse = nullptr;           ///< [ring][z]
  const double* carry = nullptr;             ///< [ring][z]
  const double* drop = nullptr;              ///< [ring][z]
  const double* inverse_of_layer = nullptr;  ///< the same, [z][ring]
  const double* carry_of_layer = nullptr;
  const double* drop_of_layer = nullptr;
  const double* first_above = nullptr;  ///< gamma h times the rate through the upper face [z]
  const double* first_below = nullptr;
  const double* above = nullptr;  ///< h times the same [z]
  const double* below = nullptr;
  // The second stage's right side: old y + fresh Y + h axial(axial_old y + axial_fresh Y), Y the first stage.
  double old = 0, fresh = 0, axial_old = 0, axial_fresh = 0;
};

/// What goes from one ring to the next is added up: sum += weight conductance (inner - outer), [z]; nothing if `ring`
/// is 0.
struct Crossing {
  std::size_t ring = 0;  ///< the outer one
  double weight = 0;
  const double* conductance = nullptr;
  double* sum = nullptr;
};

/// One bore within an implicit stage, S streams and M = S/2 passes.
struct BoreFactors {
  std::size_t row = 0;
  std::size_t first = 0;                  ///< layer
  std::size_t past = 0;                   ///< layer
  bool flows = false;                     ///< standing fluid answers its own layer alone
  const double* answer = nullptr;         ///< [S][3 S + 1][z]: a stream per old in-bore row and per far end, see `rest`
  const double* from_below = nullptr;     ///< [S][M][z]: a stream per what comes up from the layer below
  const double* from_inlet = nullptr;     ///< [S][M][z]: a stream per what comes down into the layer
  const double* keeps_inner = nullptr;    ///< [S][z]: Chain's factors
  const double* forth = nullptr;          ///< [S][z]
  const double* keeps_outer = nullptr;    ///< [S][z]
  const double* back = nullptr;           ///< [S][z]
  const double* outward = nullptr;        ///< [z], of mode 0
  const double* from_streams = nullptr;   ///< [S][S][z]: inner node of a mode per stream's inlet, and per its outlet
  const double* conductance = nullptr;    ///< [z]: outer node of mode 0 to far end, per height [W/(m K)]
  const double* wall_response = nullptr;  ///< [z]: first ring per heat through the wall [K m/W]
};

/// What a bore's wall would have without the group's own heat: undisturbed + now + ahead (now - before), [z] each.
struct Outside {
  const double* undisturbed = nullptr;
  const double* now = nullptr;
  const double* before = nullptr;
  double ahead = 0;
};

/// Rows of a group's work space: the far ends, then the streams (at first their parts that do not depend on the inlet),
/// then what enters each stream.
inline constexpr std::size_t work_rows(std::size_t streams) {
  return 2 * streams + 1;
}

/// The kernels of one instruction set. Bore kernels: [0] one pass, [1] two.
struct Kernels {
  const char* name;
  std::size_t lanes;  ///< doubles in a register

  /// First stage inwards: e of every ring from y, the ring beyond at `beyond` [z].
  void (*first_inwards)(const RingFactors& rings, const double* y, const double* beyond, double* e);

  /// First stage outwards from the innermost ring, which `stage` must hold already, to what the second stage needs: y
  /// becomes old y + fresh Y, `stage` (e up to now) axial_old y + axial_fresh Y.
  void (*first_outwards)(const RingFactors& rings, const Crossing& crossing, double* y, double* stage);

  /// Second stage inwards: y becomes e.
  void (*second_inwards)(const RingFactors& rings, double* y, const double* stage, const double* beyond);

  /// Second stage outwards from the innermost ring.
  void (*second_outwards)(const RingFactors& rings, const Crossing& crossing, double* y);

  /// y += scale response heat, [z].
  void (*add_heat)(std::size_t row, const double* response, double scale, const double* heat, double* y);

  /// The streams' parts from the old in-bore rows `x` and the innermost ring's e.
  void (*bore_rest[2])(const BoreFactors& bore, const double* x, const Outside& outside, const double* e, double* work);

  /// Up the bore: what each pass brings up at inlets of 0 into up[group][2], of `count` groups side by side.
  void (*bore_upwards[2])(std::size_t count, const BoreFactors* const* bores, double* const* works, double* up);

  /// Down the bore: the streams, for the passes' inlets[group][2].
  void (*bore_downwards[2])(std::size_t count, const BoreFactors* const* bores, double* const* works,
                            const double* inlets);

  /// The in-bore rows x become old x + fresh times this stage's; heat through the wall and innermost ring follow;
  /// `heat` += seconds * heat [J/m].
  void (*bore_finish[2])(const BoreFactors& bore, const double* work, double seconds, double old, double fresh,
                         double* x, double* innermost, double* heat);
};

/// Groups that go up or down the bore side by side, at most: each waits on itself alone.
inline constexpr std::size_t side_by_side = 4;

}  // namespace stillground::march::fused
