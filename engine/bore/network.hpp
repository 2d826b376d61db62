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

/// Everything between fluid and bore wall, per metre.
struct Network {
  std::size_t passes = 1;
  std::array<Mode, most_streams> modes;  ///< streams() of them
  PerStream capacity{};                  ///< of each stream [J/(m K)], > 0

  std::size_t streams() const { return 2 * passes; }
};

/// The shape that an odd mode has on the bore wall: legs at +1 and -1 in opposite halves, cos(angle); legs at +1, -1,
/// +1, -1 round the axis, cos(2 angle).
enum class OddShape { halves, quarters };

/// What the network of a bore with one stream down and an equal one up is made of: one U, or several side by side.
/// Shares are of the steady temperature drop between wall (0) and fluid (1), see EvenStorage and OddStorage.
struct NetworkParts {
  double bore_resistance = 0;      ///< R_b [K m/W]
  double internal_resistance = 0;  ///< R_a: T_down - T_up = q_a R_a, q_a from the whole downward stream [K m/W]
  double even_share = 0;           ///< mean of grout and pipe walls, legs at one temperature; 0..1
  double odd_share = 0;            ///< root mean square of one side in the odd mode; 0..1
  double grout_capacity = 0;       ///< grout and pipe walls, whole bore [J/(m K)]
  double fluid_capacity = 0;       ///< one stream [J/(m K)]
  double even_spread = 0;          ///< standard deviation about even_share; 0: all of it at one temperature
  double odd_wall_share = 0;       ///< mean of the bore wall on one side in the odd mode
  double ground_capacity = 0;      ///< rho c of the ground times the bore's cross-section [J/(m K)]; 0: no ground node
  OddShape shape = OddShape::halves;
  double odd_part = 0.5;  ///< of grout_capacity that the odd mode's downward stream answers for
};

/// Even mode: both streams at their mean M; the bore's whole heat q' = (M - T_wall)/R_b. Odd mode: half the streams'
/// difference, D = (T_down - T_up)/2; +q_a of the downward stream and -q_a of the upward one is q_a = D/(R_a/2).
///
/// The nodes stand by what the steady state stores.
///
/// Even mode: either node has half the capacity of grout and pipe walls, at the mean of their steady temperatures plus
/// and minus the spread of these. So the heat stored in steady state is exact, and so is the response to slow changes
/// to first order; fixed halves keep the energy exact when the film changes. The outer node keeps a tenth of the mean
/// share, which legs at the wall would take from it. Measured (validation/bore_section): within 0.12 K at 50 W/m from
/// half an hour after a step on, where a single node at the mean is off by up to 0.9 K, and by 0.7 K after an hour.
///
/// Odd mode: the inner node is half of grout and pipe walls on either side, at +/- the root mean square of their steady
/// temperatures: what slows a slow change to first order is the sum of capacities times squared shares, and no heat of
/// the bore is kept by it. Measured (validation/bore_section): within 0.5 K at 50 W/m in a leg from half an hour after
/// a step on, where a node at the mean is off by up to 1 K with two idle legs on the line between. The outer node is
/// the ground nearby, through which part of what one leg gives the other goes round the bore. On a cylinder heat of the
/// shape cos(n angle) meets the admittance -x K_n'(x)/(n K_n(x)), x = r_b sqrt(s/alpha), in units of its steady value
/// (Carslaw & Jaeger 1959, ch. XIII). For n = 1 a node at 3/4 of the wall's temperature with 1.62 times the capacity of
/// ground in the bore's place has the same at x = 0 and 1, and within 12 % up to x = 3; for n = 2 one at 2/3 with 0.46
/// times of it, within 2 %. It stays colder than the inner node, with the capacity that makes up for it.
Network make_network(const NetworkParts& parts);

/// Two U's in one bore, one after the other: the legs stand on a square, in the order down 1, up 1, down 2, up 2 or
/// with the first U's legs opposite each other. By the square's symmetry the resistances have four modes: all legs
/// alike; legs alike with those opposite and unlike those beside; and two, equal ones, in which opposite legs are
/// unlike. Shares as above: a quarter of the bore stands for a leg of the alternate mode, half for one of an opposite.
struct SeriesParts {
  double bore_resistance = 0;       ///< R_b, heat of all four legs [K m/W]
  double alternate_resistance = 0;  ///< one leg's T over its q, legs round the square at +, -, +, - [K m/W]
  double opposite_resistance = 0;   ///< the same with opposite legs at + and -, the others at 0 [K m/W]
  double even_share = 0;
  double alternate_share = 0;
  double opposite_share = 0;
  double grout_capacity = 0;  ///< grout and pipe walls, whole bore [J/(m K)]
  double fluid_capacity = 0;  ///< one leg [J/(m K)]
  bool crossed = false;       ///< a U's own legs stand opposite each other, not side by side
  double even_spread = 0;
  double alternate_wall_share = 0;
  double opposite_wall_share = 0;
  double ground_capacity = 0;  ///< as above
};
Network make_network(const SeriesParts& parts);

/// A pipe within a pipe. The annulus exchanges with the wall through outer pipe and grout, the inner pipe with the
/// annulus alone; the inner pipe's wall has no node of its own, half of what it stores belongs to either stream.
struct ConcentricParts {
  double wall_resistance = 0;      ///< annulus to bore wall [K m/W]
  double internal_resistance = 0;  ///< inner stream to annulus [K m/W]
  double share = 0;                ///< mean temperature of outer pipe and grout over that of the annulus, steady; 0..1
  double grout_capacity = 0;       ///< grout and outer pipe [J/(m K)]
  double annulus_capacity = 0;     ///< with half of the inner pipe's wall [J/(m K)]
  double inner_capacity = 0;       ///< with half of the inner pipe's wall [J/(m K)]
  bool down_annulus = true;        ///< the annulus goes down, the inner pipe up
  double spread = 0;               ///< standard deviation about `share`
};
Network make_network(const ConcentricParts& parts);

}  // namespace stillground::bore
