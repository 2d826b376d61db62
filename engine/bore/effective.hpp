#pragma once

#include <Eigen/Core>

#include "engine/bore/network.hpp"

namespace stillground::bore {

/// Resistances of two equal legs per length of bore.
struct LegResistances {
  double bore = 0;      ///< R_b: both legs at one temperature, T_fluid - mean wall = q' R_b, q' of both legs [K m/W]
  double internal = 0;  ///< R_a: legs giving +q and -q, T_1 - T_2 = q R_a [K m/W]
};

/// From the matrix of two equal legs: R_b = (R_11 + R_12)/2, R_a = 2 (R_11 - R_12). Source: Hellstrom (1991), Ground
/// heat storage [from memory], equal to the even and odd modes of the matrix.
LegResistances leg_resistances(const Eigen::MatrixXd& matrix);

/// Effective resistance R_b* [K m/W], (T_in + T_out)/2 - mean wall = q' R_b*, of any loop: the streams' linear
/// equations over `length` [m], solved by a matrix exponential. `heat_rate`: m c of the bore [W/K]. The wall stands
/// above ground of one temperature by the local heat times `ground` [K m/W], >= 0. Without ground the wall has one
/// temperature at every depth: R_b eta coth(eta) for a U; behind much of it (R_g >> R_b) the heat is one at every
/// depth, R_b + (H/(m c))^2/(3 R_a).
double effective_resistance(const Network& network, double length, double heat_rate, double ground = 0);

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
