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
  const unsigned char* alike = nullptr;      ///< [pack]: how many packs from here on are of one ground; 0: mixed
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

/// The amplitudes that take the march's own steps (see ModeGround), between two stages as within a step. Of each:
/// what it keeps over a step; what it gains per temperature that the first and the second stage's heat gives the whole
/// layer (`per_heat`); what the wall reads of it at either stage. Five numbers, in this order, for all layers of one
/// ground.
struct ModeFactors {
  std::size_t modes = 0;
  std::size_t row = 0;
  const unsigned char* alike = nullptr;  ///< [eight layers]: how many eights from here on are of one ground; 0: mixed
  const double* of_layer = nullptr;      ///< [z][mode][5]
  const double* of_mode = nullptr;       ///< [mode][5][z]
  const double* per_heat = nullptr;      ///< h/(rho c) [z]
  const double* second_wall = nullptr;   ///< the wall at the second stage per first stage's heat [z]
};

/// What the end of a turn, the slow clock's step, does to a group's amplitudes, rows of which are: the slow modes,
/// their stand-ins, the quick modes; then what axial conduction adds to each quick mode throughout the turn, what it
/// adds to the first stand-in in a step, and by how much that one will be too high at the turn's end.
struct TurnFactors {
  std::size_t row = 0;
  std::size_t slow = 0;
  std::size_t stand_ins = 0;       ///< five: the kernels count on it
  std::size_t modes = 0;           ///< slow and quick ones
  double steps = 0;                ///< of the quick clock a turn
  const double* keeps = nullptr;   ///< [row][z]: over a turn
  const double* share = nullptr;   ///< [slow mode][stand-in], see StandIns
  const double* start = nullptr;   ///< [slow mode][stand-in]
  const double* weight = nullptr;  ///< [mode]: part in the wall, for one of the first stand-in
  const double* steady = nullptr;  ///< [quick mode][z]: amplitude per what half a turn would add
  int axial_steps = 1;             ///< in half a turn
  const double* above = nullptr;   ///< axial rates times the time of one of them [z]
  const double* below = nullptr;
  const double* shape = nullptr;         ///< [ring][mode]
  const std::size_t* reaches = nullptr;  ///< [ring]: modes that reach it or one farther out, from the slowest

  std::size_t row_of(std::size_t mode) const { return (mode < slow ? mode : mode + stand_ins) * row; }
  std::size_t added_row(std::size_t quick) const { return (modes + stand_ins + quick) * row; }
  std::size_t ramp_row() const { return added_row(modes - slow); }
  std::size_t excess_row() const { return ramp_row() + row; }
};

/// One bore within an implicit stage, S streams and M = S/2 passes.
struct BoreFactors {
  std::size_t row = 0;
  std::size_t first = 0;               ///< layer
  std::size_t past = 0;                ///< layer
  bool flows = false;                  ///< standing fluid answers its own layer alone
  const double* answer = nullptr;      ///< [S][3 S + 1][z]: a stream per old in-bore row and per far end, see `rest`
  const double* from_below = nullptr;  ///< [S][M][z]: a stream per what comes up from the layer below
  const double* from_inlet = nullptr;  ///< [S][M][z]: a stream per what comes down into the layer
  const double* up_runs = nullptr;     ///< [1, 2, 4 layers][M][M][z]: what comes up per what came up so far below
  const double* up_carries = nullptr;  ///< [M][M][z]: the same, from below the register's last layer
  const double* down_runs = nullptr;   ///< the same of what goes down
  const double* down_carries = nullptr;
  const double* top = nullptr;            ///< [z]: 1 in the bore's first layer
  const double* toe = nullptr;            ///< [z]: 1 in its last
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

/// Rows of a group's work space: the far ends, then the streams' parts that do not depend on the inlet.
inline constexpr std::size_t work_rows(std::size_t streams) {
  return streams + 1;
}

struct RingKernels {
  /// First stage inwards: e of every ring from y.
  void (*first_inwards)(const RingFactors& rings, const double* y, double* e);

  /// First stage outwards from the innermost ring, which `stage` must hold already, to what the second stage needs: y
  /// becomes old y + fresh Y, `stage` (e up to now) axial_old y + axial_fresh Y.
  void (*first_outwards)(const RingFactors& rings, double* y, double* stage);

  /// Second stage inwards: y becomes e.
  void (*second_inwards)(const RingFactors& rings, double* y, const double* stage);

  /// Second stage outwards from the innermost ring.
  void (*second_outwards)(const RingFactors& rings, double* y);
};

/// Layers [from, past) are whole eights.
struct ModeKernels {
  /// What the wall reads at either stage of the step to come, `second` without the first stage's heat.
  void (*read)(const ModeFactors& modes, std::size_t from, std::size_t past, const double* x, double* first,
               double* second);

  /// A step of x under the heat through the wall [W/m] of both stages, and what is read then. `ramp`: what the first of
  /// them gains besides.
  void (*step)(const ModeFactors& modes, std::size_t from, std::size_t past, double* x, const double* ramp,
               const double* first_heat, const double* second_heat, double* first, double* second);

  /// to = read + second_wall heat, [z].
  void (*second_wall)(const ModeFactors& modes, std::size_t from, std::size_t past, const double* read,
                      const double* heat, double* to);

  /// A turn is over: in layers [from, past), whose stand-ins and quick modes have been stepped, the slow modes take
  /// from their stand-ins; in all others every mode decays.
  void (*end_turn)(const TurnFactors& turn, std::size_t from, std::size_t past, double* x);

  /// Half a turn of axial conduction of the slow modes. Returns the sum over its steps of the topmost layer's heat,
  /// K m2, before each.
  double (*conduct)(const TurnFactors& turn, double* x);

  /// The same, and what goes with the coming turn: what axial conduction adds to quick modes and stand-ins meanwhile.
  /// The stand-ins start. `scratch`: a row.
  double (*start_turn)(const TurnFactors& turn, std::size_t from, std::size_t past, double* x, double* scratch);

  /// The rings' temperatures [ring][z].
  void (*rises)(const TurnFactors& turn, const double* x, double* theta);
};

/// [0] one pass, [1] two.
struct BoreKernels {
  /// Up the bore, from the old in-bore rows `x` and the innermost ring's e: what each pass brings up at inlets of 0.
  void (*upwards[2])(const BoreFactors& bore, const double* x, const Outside& outside, const double* e, double* work,
                     double* up);

  /// Down the bore, for the passes' inlets. The in-bore rows x become old x + fresh times this stage's; heat through
  /// the wall [W/m] takes the place of the far ends in `work`, the innermost ring follows; `heat` += seconds * heat
  /// [J/m].
  void (*downwards[2])(const BoreFactors& bore, double* work, const double* inlets, double seconds, double old,
                       double fresh, double* x, double* innermost, double* heat);

  /// y += sum over `count` answers, each times its factor: `rows` rows of y and of the answers, layers [from, past),
  /// whole eights.
  void (*add_answers)(std::size_t rows, std::size_t row, std::size_t from, std::size_t past, std::size_t count,
                      const double* const* answers, const double* factors, double* y);
};

/// The kernels of one instruction set.
struct Kernels {
  const char* name;
  std::size_t lanes;  ///< doubles in a register
  const RingKernels& rings;
  const ModeKernels& modes;
  const BoreKernels& bore;
};

}  // namespace stillground::march::fused
