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

/// Where a bore stores heat in steady state, between wall (0) and fluid (1): grout and pipe walls together, weighted by
/// their heat capacities.
struct StorageShares {
  double even = 0;         ///< legs at one temperature: mean
  double even_spread = 0;  ///< the same: standard deviation about it
  double odd = 0;          ///< legs at +1 and -1: mean on leg 1's side
  double odd_wall = 0;     ///< the same: mean of the bore wall on leg 1's side
};

/// The pipe of every leg and what its material and the grout store: what storage needs beyond the steady resistances.
struct Filling {
  double inner_radius = 0;         ///< of the pipes [m]
  double film_resistance = 0;      ///< of one leg [K m/W]
  double grout_heat_capacity = 0;  ///< [J/(m3 K)]
  double pipe_heat_capacity = 0;   ///< [J/(m3 K)]
};

/// Mean and spread of legs at one temperature; of any number of legs evenly round the axis, the first on the x axis at
/// x > 0.
struct EvenStorage {
  double mean = 0;
  double spread = 0;
};
EvenStorage even_storage(const Multipoles& multipoles, const Filling& filling);

/// Of two equal legs at (+x, 0) and (-x, 0), leg 1 on the right. Pipe walls are at the mean temperature between film
/// and grout all round.
StorageShares storage_shares(const Multipoles& multipoles, const Filling& filling);

/// Film and wall of one pipe per length [K m/W]; `film_resistance` from materials::film_resistance.
double pipe_resistance(const model::Pipe& pipe, double film_resistance);

/// The cross-section of a bore with one U: legs on the x axis, leg 1 on the right. `leg_resistance` of one pipe [K
/// m/W].
BoreSection single_u_section(const model::Bore& bore, const model::SingleU& loop, double ground_conductivity,
                             double leg_resistance);

/// What a single U's network is made of, per length of bore.
struct SingleUResistance {
  LegResistances legs;
  StorageShares shares;
};

/// Steady resistances of a single U in ground of `ground_conductivity` [W/(m K)] with `film_resistance` [K m/W] in each
/// leg. Pipe walls are counted by the pipe's own conductivity. A measured resistance (model::Bore::resistance) is not
/// looked at. Throws InputError when the legs do not fit into the bore. 1 ms of work, up to 6 ms when the legs touch.
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
