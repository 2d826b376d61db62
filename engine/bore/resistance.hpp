#pragma once

#include <Eigen/Core>
#include <array>

#include "engine/bore/multipole.hpp"
#include "engine/bore/network.hpp"
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

/// The pipe of every leg and what its material and the grout store: what storage needs beyond the steady resistances.
struct Filling {
  double inner_radius = 0;         ///< of the pipes [m]
  double film_resistance = 0;      ///< of one leg [K m/W]
  double grout_heat_capacity = 0;  ///< [J/(m3 K)]
  double pipe_heat_capacity = 0;   ///< [J/(m3 K)]
};

/// Where a bore stores heat in steady state with all legs at one temperature, between wall (0) and fluid (1): grout and
/// pipe walls together, weighted by their heat capacities. Pipe walls are at the mean temperature between film and
/// grout all round.
struct EvenStorage {
  double mean = 0;
  double spread = 0;  ///< standard deviation about the mean
};
/// Of any number of legs evenly round the axis, the first on the x axis at x > 0.
EvenStorage even_storage(const Multipoles& multipoles, const Filling& filling);

/// The same on one side of an odd mode, as a root mean square, and the mean of the bore wall there; leg 1 at 1.
struct OddStorage {
  double root_mean_square = 0;
  double wall = 0;
};
/// Of leg 1 against the one opposite, with as many idle ones as there are: the side is the half bore round leg 1.
OddStorage opposite_storage(const Multipoles& multipoles, const Filling& filling);
/// Of four legs at +1, -1, +1, -1 round the axis: the side is leg 1's quarter.
OddStorage alternate_storage(const Multipoles& multipoles, const Filling& filling);

/// Film and wall of one pipe per length [K m/W]; `film_resistance` from materials::film_resistance.
double pipe_resistance(const model::Pipe& pipe, double film_resistance);

/// Steady resistances of a bore's modes (see Mode), per length, and where what lies between fluid and wall stores heat
/// in each: 0 at the wall end, 1 at the fluid. Of two equal opposite modes the second is left to the first.
struct ModeResistances {
  std::array<double, most_streams> resistance{};  ///< [K m/W]; [0] is R_b
  std::array<double, most_streams> share{};       ///< mean; of an odd mode root mean square, on one side
  std::array<double, most_streams> wall{};        ///< of odd modes: mean of the bore wall on that side
  double spread = 0;                              ///< of the even mode about its share
};

/// Resistances of the films that a flow makes, per length [K m/W].
struct Films {
  double pipe = 0;           ///< inside a leg; of a coaxial loop inside the inner pipe
  double annulus_inner = 0;  ///< of a coaxial loop, on the inner pipe
  double annulus_outer = 0;  ///< of a coaxial loop, on the outer pipe
};

/// A bore of legs filled with what the scenario says, for the storage above.
Filling filling(const model::Bore& bore, const Films& films);

/// What a bore stores between fluid and wall, and in its streams, per length [J/(m K)].
struct Capacities {
  double grout = 0;    ///< grout and the pipes between streams and wall, whole bore
  PerStream stream{};  ///< of each stream; U's side by side count together
};

/// The cross-section of a bore with one U: legs on the x axis, leg 1 on the right. `leg_resistance` of one pipe [K
/// m/W].
BoreSection single_u_section(const model::Bore& bore, const model::SingleU& loop, double ground_conductivity,
                             double leg_resistance);

/// The cross-section of a bore with two U's: legs on the axes, counted from +x round to -y.
BoreSection double_u_section(const model::Bore& bore, const model::DoubleU& loop, double ground_conductivity,
                             double leg_resistance);

/// Steady resistances in ground of `ground_conductivity` [W/(m K)]. Pipe walls are counted by the pipe's own
/// conductivity. A measured resistance (model::Bore::resistance) is not looked at. Throws InputError when the legs do
/// not fit into the bore. One U: 0.6 ms of work, up to 5 ms when the legs touch.
///
/// Modes of one U: both legs alike, R_b; legs at +D and -D, D over the heat of one, R_a/2.
ModeResistances mode_resistances(const model::Bore& bore, const model::SingleU& loop, double ground_conductivity,
                                 const Films& films);

/// Of two U's, by the eigenvectors of their circulant matrix: all legs alike, R_b; legs round the square at +D, -D, +D,
/// -D, R_alt; opposite legs at +D and -D, R_opp, twice. Side by side (parallel) two legs go each way: the second mode
/// is R_alt/2, or R_opp/2 where a U's own legs stand opposite each other.
ModeResistances mode_resistances(const model::Bore& bore, const model::DoubleU& loop, double ground_conductivity,
                                 const Films& films);

/// Of a coaxial loop, exactly: annulus to wall through film, outer pipe and grout; inner stream to annulus through
/// film, pipe, film.
ModeResistances mode_resistances(const model::Bore& bore, const model::Coaxial& loop, double ground_conductivity,
                                 const Films& films);

/// Capacities of a bore filled with fluid of `fluid_heat_capacity`, volumetric [J/(m3 K)].
Capacities capacities(const model::Bore& bore, double fluid_heat_capacity);

/// What a metre of bore takes to build.
struct Amounts {
  double pipe = 0;   ///< of all pipes [m]
  double fluid = 0;  ///< [m3]
  double grout = 0;  ///< [m3]
};
Amounts amounts(const model::Bore& bore);

/// Times that the fluid goes down and up.
std::size_t passes(const model::Loop& loop);

/// The network of a bore's resistances and capacities. `ground_capacity`: rho c of the ground times the bore's
/// cross-section [J/(m K)].
Network loop_network(const model::Loop& loop, const ModeResistances& modes, const Capacities& capacities,
                     double ground_capacity);

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
