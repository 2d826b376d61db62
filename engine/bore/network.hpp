#pragma once

namespace stillground::bore {

/// One mode of the legs per metre of bore: fluid -> inner node -> outer node -> wall, three positive resistances in
/// series with a heat capacity at either node. In steady state they add up to the mode's resistance exactly, where a
/// delta network between two legs would need a negative branch for common geometries.
struct Mode {
  double inner = 0;           ///< fluid to inner node [K m/W], > 0
  double middle = 0;          ///< inner to outer node [K m/W], > 0
  double outer = 0;           ///< outer node to the mode's end [K m/W], > 0
  double inner_capacity = 0;  ///< [J/(m K)], > 0
  double outer_capacity = 0;  ///< [J/(m K)], > 0

  double resistance() const { return inner + middle + outer; }  ///< [K m/W]
};

/// Everything between fluid and bore wall, per metre, for a bore with a downward and an upward stream.
///
/// Even mode: both streams at their mean M; the bore's whole heat q' = (M - T_wall)/even.resistance(), that is R_b.
/// Odd mode: half the streams' difference, D = (T_down - T_up)/2; the heat +q_a of the downward stream and -q_a of the
/// upward one is q_a = D/odd.resistance(), that is R_a/2 (R_a: T_down - T_up = q_a R_a). It ends at zero: far out, and
/// on the line between the legs, there is no odd temperature. Heat of the streams: q_down = q'/2 + q_a, q_up = q'/2 -
/// q_a.
struct Network {
  Mode even;
  Mode odd;
  double fluid_capacity = 0;  ///< of one stream [J/(m K)]
};

/// What the network of a bore with two streams is made of. Shares are of the steady temperature drop between wall (0)
/// and fluid (1), see StorageShares.
struct NetworkParts {
  double bore_resistance = 0;      ///< R_b [K m/W]
  double internal_resistance = 0;  ///< R_a [K m/W]
  double even_share = 0;           ///< mean of grout and pipe walls, legs at one temperature; 0..1
  double odd_share = 0;            ///< the same of one side in the odd mode; 0..1
  double grout_capacity = 0;       ///< grout and pipe walls, whole bore [J/(m K)]
  double fluid_capacity = 0;       ///< one stream [J/(m K)]
  double even_spread = 0;          ///< standard deviation about even_share; 0: all of it at one temperature
  double odd_wall_share = 0;       ///< mean of the bore wall on one side in the odd mode
  double ground_capacity = 0;      ///< rho c of the ground times the bore's cross-section [J/(m K)]; 0: no ground node
};

/// Places the nodes by what the steady state stores.
///
/// Even mode: either node has half the capacity of grout and pipe walls, at the mean of their steady temperatures plus
/// and minus the spread of these. So the heat stored in steady state is exact, and so is the response to slow changes
/// to first order; fixed halves keep the energy exact when the film changes. The outer node keeps a tenth of the mean
/// share, which legs at the wall would take from it. Measured (validation/bore_section): within 0.12 K at 50 W/m from
/// half an hour after a step on, where a single node at the mean is off by up to 0.9 K, and by 0.7 K after an hour.
///
/// Odd mode: the inner node is half of grout and pipe walls on either side, at +/- their steady mean. The outer node is
/// the ground nearby, through which part of what one leg gives the other goes round the bore. On a cylinder heat of the
/// shape cos(angle) meets the admittance -x K1'(x)/K1(x), x = r_b sqrt(s/alpha), in units of its steady value (Carslaw
/// & Jaeger 1959, ch. XIII); a node at 3/4 of the wall's temperature with 1.62 times the capacity of ground in the
/// bore's place has the same at x = 0 and 1, and within 12 % up to x = 3. It stays colder than the inner node, with the
/// capacity that makes up for it.
Network make_network(const NetworkParts& parts);

}  // namespace stillground::bore
