#pragma once

#include <cstddef>

/// The fast stepper's inner loops. Every array is rows of `row` doubles with the layers z innermost, aligned to 64
/// bytes, row a multiple of eight; see march::StateLayout for the rows of a block. No other header is included here:
/// the kernels are compiled once for each instruction set, and nothing that is shared with the rest of the program may
/// be compiled with instructions that the machine may lack.
namespace stillground::march::fused {

/// Rings that take every step: the radial factors of an implicit stage (RadialFactors) and axial conduction
/// (AxialFactors) times the step. The radial factors depend on a layer's ground alone, so that a pack of layers of one
/// ground reads one number for all of them: memory, not arithmetic, is what the kernels wait for.
struct RingFactors {
  std::size_t rings = 0;
  std::size_t row = 0;
  const unsigned char* uniform_run = nullptr;  ///< [pack]: how many packs from here on are of one ground; 0: mixed
  const double* inverse = nullptr;             ///< 1/D [ring][z]
  const double* carry = nullptr;               ///< c = kappa K_{i+1/2}/(C D) [ring][z]
  const double* drop = nullptr;                ///< d = kappa K_{i-1/2}/(C D) [ring][z]
  const double* inverse_of_layer = nullptr;    ///< the same, [z][ring]
  const double* carry_of_layer = nullptr;
  const double* drop_of_layer = nullptr;
  const double* first_above = nullptr;  ///< gamma h times the rate through the upper face [z]
  const double* first_below = nullptr;
  const double* above = nullptr;  ///< h times the same [z]
  const double* below = nullptr;
  // The second stage's right side: old y + fresh Y + h axial(axial_old y + axial_fresh Y), Y the first stage.
  double old = 0, fresh = 0, axial_old = 0, axial_fresh = 0;
};

/// The amplitudes x_m that take every step (see ModeGround), from step to step. Of each five numbers, in this order,
/// for all layers of one ground:
///   decay k, first_gain a, second_gain b of a step   x_m <- k x_m + a p_1 + b p_2,   p_i = h q_i/(rho c),
///   first_read, second_read                          w_m/(1 + gamma h alpha lambda_m) and w_m k,
/// q_i the heat through the wall in the step's stage i [W/m], w_m what the wall has of an amplitude.
struct ModeFactors {
  std::size_t modes = 0;
  std::size_t row = 0;
  const unsigned char* uniform_run = nullptr;  ///< [eight layers]: how many eights on are of one ground; 0: mixed
  const double* of_layer = nullptr;            ///< [z][mode][5]
  const double* of_mode = nullptr;             ///< [mode][5][z]
  const double* per_heat = nullptr;            ///< h/(rho c) [z]
  const double* second_wall = nullptr;  ///< sum_m w_m a_m h/(rho c): second stage's wall per first stage's heat [z]
};

/// What a macro-step does to a group's amplitudes, rows of which are as StateLayout has them: slow modes, reduced
/// modes, quick modes, `added` to each quick mode, `ramp` of the first reduced mode, its `excess`.
struct MacroStepFactors {
  std::size_t row = 0;
  std::size_t slow = 0;
  std::size_t reduced_modes = 0;   ///< five: the kernels count on it
  std::size_t modes = 0;           ///< slow and quick ones
  double steps = 0;                ///< n, in a macro-step
  const double* decay = nullptr;   ///< k^n: over a macro-step [row][z]
  const double* share = nullptr;   ///< [slow mode][reduced mode], see ReducedModes
  const double* start = nullptr;   ///< [slow mode][reduced mode]
  const double* weight = nullptr;  ///< v_m = w_m/W_0 [mode]: part in the wall, for one of the first reduced mode
  const double* steady = nullptr;  ///< 1/((H/2) alpha lambda_m) [quick mode][z], H the macro-step
  int axial_steps = 1;             ///< in half a macro-step
  const double* above = nullptr;   ///< axial rates times the time of one of them [z]
  const double* below = nullptr;
  const double* shape = nullptr;              ///< S [ring][mode]
  const std::size_t* active_modes = nullptr;  ///< [ring]: that reach it or one farther out, from the slowest

  std::size_t row_of(std::size_t mode) const { return (mode < slow ? mode : mode + reduced_modes) * row; }
  std::size_t added_row(std::size_t quick) const { return (modes + reduced_modes + quick) * row; }
  std::size_t ramp_row() const { return added_row(modes - slow); }
  std::size_t excess_row() const { return ramp_row() + row; }
};

/// One bore within an implicit stage, S streams and M = S/2 passes; bore_kernels.cpp has the equations.
struct BoreFactors {
  std::size_t row = 0;
  std::size_t first = 0;               ///< layer
  std::size_t end = 0;                 ///< one past the last layer
  bool flows = false;                  ///< stagnant fluid exchanges within its own layer alone
  const double* response = nullptr;    ///< R [S][3 S + 1][z]: a stream per old in-bore row, then per far end
  const double* from_below = nullptr;  ///< B [S][M][z]: a stream per what comes up from the layer below
  const double* from_inlet = nullptr;  ///< A [S][M][z]: a stream per what comes down into the layer
  const double* up_runs = nullptr;     ///< [1, 2, 4 layers][M][M][z]: products of B's upward part over so many layers
  const double* up_carries = nullptr;  ///< [M][M][z]: the same, from below the register's last layer
  const double* down_runs = nullptr;   ///< the same of A's downward part
  const double* down_carries = nullptr;
  const double* top = nullptr;                 ///< [z]: 1 in the bore's first layer
  const double* toe = nullptr;                 ///< [z]: 1 in its last
  const double* inner_from_old = nullptr;      ///< [S][z]: Chain's factors
  const double* inner_from_outer = nullptr;    ///< [S][z]
  const double* outer_from_old = nullptr;      ///< [S][z]
  const double* outer_from_inner = nullptr;    ///< [S][z]
  const double* outer_from_far = nullptr;      ///< [z], of mode 0
  const double* inner_from_streams = nullptr;  ///< [S][S][z]: of a mode per stream's inlet, and per its outlet
  const double* conductance = nullptr;         ///< outer node of mode 0 to far end, per height [z] [W/(m K)]
  const double* wall_response = nullptr;       ///< first ring per heat through the wall [z] [K m/W]
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

/// Layers [from, end) are whole eights.
struct ModeKernels {
  /// The wall at either stage of the step to come without their heat: `first` = sum_m first_read x_m, `second` =
  /// sum_m second_read x_m, of which the first stage's heat is missing too.
  void (*read)(const ModeFactors& modes, std::size_t from, std::size_t end, const double* x, double* first,
               double* second);

  /// A step of x under the heat through the wall [W/m] of both stages, and what is read then. `ramp`: what the first
  /// amplitude gains besides.
  void (*step)(const ModeFactors& modes, std::size_t from, std::size_t end, double* x, const double* ramp,
               const double* first_heat, const double* second_heat, double* first, double* second);

  /// to = read + second_wall heat, [z].
  void (*second_wall)(const ModeFactors& modes, std::size_t from, std::size_t end, const double* read,
                      const double* heat, double* to);
};

/// Layers [from, end), whole eights: those with a bore in them, whose reduced and quick modes have been stepped.
struct MacroStepKernels {
  /// Before a macro-step: half of its axial conduction of the slow modes, what axial conduction adds to the others
  /// meanwhile, the reduced modes' start. Returns the sum over the axial steps of the topmost layer's heat, K m2,
  /// before each. `scratch`: a row.
  double (*start)(const MacroStepFactors& macro, std::size_t from, std::size_t end, double* x, double* scratch);

  /// After it: the slow modes gain what their reduced modes gained; in layers without a bore every mode decays.
  void (*end)(const MacroStepFactors& macro, std::size_t from, std::size_t end, double* x);

  /// The other half of the slow modes' axial conduction. Returns as `start`.
  double (*conduct)(const MacroStepFactors& macro, double* x);

  /// The rings' temperatures, theta_i = sum_m S_im x_m, [ring][z].
  void (*rises)(const MacroStepFactors& macro, const double* x, double* theta);
};

/// [0] one pass, [1] two.
struct BoreKernels {
  /// Up the bore, from the old in-bore rows `x` and the innermost ring's e: what each pass brings up at inlets of 0.
  void (*eliminate_upward[2])(const BoreFactors& bore, const double* x, const Outside& outside, const double* e,
                              double* work, double* up);

  /// Down the bore, for the passes' inlets. The in-bore rows x become old x + fresh times this stage's; heat through
  /// the wall [W/m] takes the place of the far ends in `work`, the innermost ring follows; `heat` += seconds * heat
  /// [J/m].
  void (*substitute_downward[2])(const BoreFactors& bore, double* work, const double* inlets, double seconds,
                                 double old, double fresh, double* x, double* innermost, double* heat);

  /// y += sum over `count` responses, each times its factor: `rows` rows of y and of the responses, layers [from, end),
  /// whole eights; `count` even.
  void (*superpose)(std::size_t rows, std::size_t row, std::size_t from, std::size_t end, std::size_t count,
                    const double* const* responses, const double* factors, double* y);
};

/// The kernels of one instruction set.
struct Kernels {
  const char* name;
  std::size_t lanes;  ///< doubles in a register
  const RingKernels& rings;
  const ModeKernels& modes;
  const MacroStepKernels& macro_step;
  const BoreKernels& bore;
};

}  // namespace stillground::march::fused
