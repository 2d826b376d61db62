#pragma once

#include <array>
#include <cstddef>

namespace stillground::bore {

/// A U, or two of them one after the other, goes down and up once or twice.
inline constexpr std::size_t most_passes = 2;
inline constexpr std::size_t most_streams = 2 * most_passes;

/// A value for each stream: those that go down first, pass by pass, then those that go up.
using PerStream = std::array<double, most_streams>;

/// One mode of the streams per metre of bore: fluid -> inner node -> outer node -> wall, three positive resistances in
/// series with a heat capacity at either node. In steady state they add up to the mode's resistance exactly, where a
/// delta network between two legs would need a negative branch for common geometries.
///
/// The mode's temperature is M = sum of reads_s T_s; its heat q = (M - inner node)/inner leaves stream s by the part
/// gives_s. Mode 0 alone ends at the bore wall; the others end at zero, for far out, and on the lines of symmetry,
/// there is no such temperature. So what the others' nodes hold is no heat of the bore: as much is missing elsewhere.
struct Mode {
  PerStream reads{};
  PerStream gives{};
  double inner = 0;           ///< fluid to inner node [K m/W], > 0
  double middle = 0;          ///< inner to outer node [K m/W], > 0
  double outer = 0;           ///< outer node to the mode's end [K m/W], > 0
  double inner_capacity = 0;  ///< [J/(m K)], >= 0
  double outer_capacity = 0;  ///< [J/(m K)], >= 0; nodes store both or neither

  double resistance() const { return inner + middle + outer; }  ///< [K m/W]
};

/// The same mode, of these streams.
Mode of_streams(Mode mode, const PerStream& reads, const PerStream& gives);

/// A mode that stores nothing; its nodes stand at thirds of the resistance.
Mode steady_mode(double resistance);

/// The mode in which the bore's heat goes to the wall. Shares as of EvenStorage.
struct EvenModeParts {
  double resistance = 0;  ///< R_b [K m/W]
  double mean = 0;        ///< of grout and pipe walls, in parts of the steady drop between wall (0) and fluid (1)
  double spread = 0;      ///< standard deviation about `mean`; 0: all of it at one temperature
  double capacity = 0;    ///< grout and pipe walls, whole bore [J/(m K)]
};

/// Either node has half the capacity, C/2, at the places mean +- spread of the steady drop. So the heat stored in
/// steady state, C mean M, is exact, and so is the response to slow changes to first order; fixed halves keep the
/// energy exact when the film changes. The outer node keeps a tenth of the mean share, which legs at the wall would
/// take from it. Measured (validation/bore_section): within 0.12 K at 50 W/m from half an hour after a step on, where a
/// single node at the mean is off by up to 0.9 K, and by 0.7 K after an hour.
Mode even_mode(const EvenModeParts& parts);

/// The shape that an odd mode has on the bore wall: legs at +1 and -1 in opposite halves, cos(angle); legs at +1, -1,
/// +1, -1 round the axis, cos(2 angle).
enum class OddShape { halves, quarters };

/// A mode in which legs pass heat to each other. Shares as of OddStorage.
struct OddModeParts {
  double resistance = 0;       ///< [K m/W]
  double share = 0;            ///< root mean square of grout and pipe walls on one side; 0..1
  double wall_share = 0;       ///< mean of the bore wall on one side
  double capacity = 0;         ///< grout and pipe walls that the mode answers for [J/(m K)]
  double ground_capacity = 0;  ///< rho c of the ground times the bore's cross-section [J/(m K)]; 0: no ground node
  OddShape shape = OddShape::halves;
};

/// The inner node is the grout and pipe walls of one side, at the root mean square of their steady temperatures: what
/// slows a slow change to first order is the sum of capacities times squared shares, and no heat of the bore is kept by
/// it. Measured (validation/bore_section): within 0.5 K at 50 W/m in a leg from half an hour after a step on, where a
/// node at the mean is off by up to 1 K with two idle legs on the line between.
///
/// The outer node is the ground nearby, through which part of what one leg gives the other goes round the bore. On a
/// cylinder heat of the shape cos(n angle) meets the admittance -x K_n'(x)/(n K_n(x)), x = r_b sqrt(s/alpha), in units
/// of its steady value (Carslaw & Jaeger 1959, ch. XIII). For n = 1 a node at 3/4 of the wall's temperature with 1.62
/// times the capacity of ground in the bore's place has the same at x = 0 and 1, and within 12 % up to x = 3; for n = 2
/// one at 2/3 with 0.46 times of it, within 2 %. It stays colder than the inner node, with the capacity that makes up
/// for it.
Mode odd_mode(const OddModeParts& parts);

}  // namespace stillground::bore
