#pragma once

#include <Eigen/Core>

#include "engine/bore/multipole.hpp"
#include "engine/model/bore.hpp"

namespace stillground::bore {

/// Resistances of two equal legs per length of bore.
struct LegResistances {
  double bore = 0;      ///< R_b: both legs at one temperature, T_fluid - mean wall = q' R_b, q' of both legs [K m/W]
  double internal = 0;  ///< R_a: legs giving +q and -q, T_1 - T_2 = q R_a [K m/W]
};

/// From the matrix of two equal legs: R_b = (R_11 + R_12)/2, R_a = 2 (R_11 - R_12). Source: Hellstrom (1991), Ground
/// heat storage [from memory], equal to the even and odd modes of the matrix.
LegResistances leg_resistances(const Eigen::MatrixXd& matrix);

/// Where the grout's mean temperature lies between wall (0) and fluid (1) in steady state, in the legs' two modes.
struct GroutShares {
  double even = 0;  ///< legs at one temperature: mean over all the grout / fluid, both above the mean wall temperature
  double odd = 0;   ///< legs at +1 and -1: mean over the half of the grout on leg 1's side / leg 1's fluid
};

/// Of two equal legs at (+x, 0) and (-x, 0), leg 1 on the right. Each within 1e-7.
GroutShares mean_grout_share(const Multipoles& multipoles);

/// Film and wall of one pipe per length [K m/W]; `film_resistance` from materials::film_resistance.
double pipe_resistance(const model::Pipe& pipe, double film_resistance);

/// The cross-section of a bore with one U: legs on the x axis, leg 1 on the right. `leg_resistance` of one pipe [K
/// m/W].
BoreSection single_u_section(const model::Bore& bore, const model::SingleU& loop, double ground_conductivity,
                             double leg_resistance);

/// What a single U's network is made of, per length of bore.
struct SingleUResistance {
  LegResistances legs;
  GroutShares shares;
};

/// Steady resistances of a single U in ground of `ground_conductivity` [W/(m K)] with `film_resistance` [K m/W] in each
/// leg. Pipe walls are counted by the pipe's own conductivity. A measured resistance (model::Bore::resistance) is not
/// looked at. Throws InputError when the legs do not fit into the bore. 0.6 ms of work, up to 5 ms when the legs touch.
SingleUResistance single_u_resistance(const model::Bore& bore, const model::SingleU& loop, double ground_conductivity,
                                      double film_resistance);

/// Effective resistance R_b*, (T_in + T_out)/2 - mean wall = q' R_b*, of a single U that gives off the same heat at
/// every depth: R_b + (H/(m c))^2/(3 R_a). `length` H [m], `mass_flow` m [kg/s] of the one U, `heat_capacity` c [J/(kg
/// K)]. Source: Hellstrom (1991), Ground heat storage [from memory, proved against the legs' differential equations].
double effective_resistance_uniform_flux(const LegResistances& legs, double length, double mass_flow,
                                         double heat_capacity);

/// The same of a single U whose bore wall has one temperature at every depth: R_b eta coth(eta), eta = H/(m c sqrt(R_a
/// R_b)). Source as above.
double effective_resistance_uniform_wall(const LegResistances& legs, double length, double mass_flow,
                                         double heat_capacity);

}  // namespace stillground::bore
