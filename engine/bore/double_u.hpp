#pragma once

#include "engine/bore/network.hpp"
#include "engine/bore/section.hpp"
#include "engine/model/bore.hpp"

namespace stillground::bore {

/// The cross-section of a bore with two U's: legs on the axes, counted from +x round to -y. `leg_resistance` of one
/// pipe, film and wall [K m/W].
BoreSection double_u_section(const model::Bore& bore, double ground_conductivity, double leg_resistance);

/// Two U's in one bore, one after the other: the legs stand on a square, in the order down 1, up 1, down 2, up 2 or
/// with the first U's legs opposite each other. By the square's symmetry the resistances have four modes: all legs
/// alike; legs alike with those opposite and unlike those beside; and two, equal ones, in which opposite legs are
/// unlike. Shares as of NetworkParts: a quarter of the bore stands for a leg of the alternate mode, half for one of an
/// opposite.
struct SeriesParts {
  double bore_resistance = 0;       ///< R_b, heat of all four legs [K m/W]
  double alternate_resistance = 0;  ///< one leg's T over its q, legs round the square at +, -, +, - [K m/W]
  double opposite_resistance = 0;   ///< the same with opposite legs at + and -, the others at 0 [K m/W]
  double even_share = 0;
  double alternate_share = 0;
  double opposite_share = 0;
  double grout_capacity = 0;   ///< grout and pipe walls, whole bore [J/(m K)]
  double fluid_capacity = 0;   ///< one leg [J/(m K)]
  bool opposite_legs = false;  ///< a U's own legs stand opposite each other, not side by side
  double even_spread = 0;
  double alternate_wall_share = 0;
  double opposite_wall_share = 0;
  double ground_capacity = 0;  ///< as of NetworkParts
};
Network make_network(const SeriesParts& parts);

}  // namespace stillground::bore
