#pragma once

#include "engine/bore/mode.hpp"

namespace stillground::bore {

/// Everything between fluid and bore wall, per metre.
struct Network {
  std::size_t passes = 1;
  std::array<Mode, most_streams> modes;  ///< streams() of them
  PerStream capacity{};                  ///< of each stream [J/(m K)], > 0

  std::size_t streams() const { return 2 * passes; }
};

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
/// difference, D = (T_down - T_up)/2; +q_a of the downward stream and -q_a of the upward one is q_a = D/(R_a/2). Where
/// the nodes stand: even_mode, odd_mode.
Network make_network(const NetworkParts& parts);

}  // namespace stillground::bore
