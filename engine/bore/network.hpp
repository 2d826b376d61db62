#pragma once

#include "engine/model/bore.hpp"

namespace stillground::bore {

/// One mode of the legs per metre of bore: fluid -> grout node -> wall, two positive resistances in series and the
/// grout's heat capacity at the node between them. In steady state the two add up to the mode's resistance exactly,
/// where a delta network between two legs would need a negative branch for common geometries.
struct Mode {
  double inner = 0;     ///< fluid to node [K m/W], > 0
  double outer = 0;     ///< node to bore wall [K m/W], > 0
  double capacity = 0;  ///< of the node [J/(m K)], > 0

  double resistance() const { return inner + outer; }  ///< [K m/W]
};

/// Everything between fluid and bore wall, per metre, for a bore with a downward and an upward stream.
///
/// Even mode: both streams at their mean M; the bore's whole heat q' = (M - T_wall)/even.resistance(), that is R_b.
/// Odd mode: half the streams' difference, D = (T_down - T_up)/2; the heat +q_a of the downward stream and -q_a of the
/// upward one is q_a = D/odd.resistance(), that is R_a/2 (R_a: T_down - T_up = q_a R_a). Its wall end is at zero: the
/// mean wall temperature has no odd part. Heat of the streams: q_down = q'/2 + q_a, q_up = q'/2 - q_a.
struct Network {
  Mode even;
  Mode odd;
  double fluid_capacity = 0;  ///< of one stream [J/(m K)]
};

/// What the network of a bore with two streams is made of.
struct NetworkParts {
  double bore_resistance = 0;      ///< R_b [K m/W]
  double internal_resistance = 0;  ///< R_a [K m/W]
  double even_share = 0;  ///< steady mean grout temperature above the wall over fluid above the wall, even mode; 0..1
  double odd_share = 0;   ///< the same of one side in the odd mode; 0..1
  double grout_capacity = 0;  ///< grout and pipe walls, whole bore [J/(m K)]
  double fluid_capacity = 0;  ///< one stream [J/(m K)]
};

/// Places each mode's grout node where it holds the steady state's heat: at the share of the mode's temperature drop
/// that the mean grout temperature has in steady state. So the heat stored in the grout is exact in steady state, and
/// the first minutes are those of a single node. Odd node: half the grout on either side, at +/- its temperature, hence
/// half the capacity for q_a.
Network make_network(const NetworkParts& parts);

}  // namespace stillground::bore
