#pragma once

#include <array>
#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/bore/network.hpp"
#include "engine/keys/key.hpp"
#include "engine/keys/reader.hpp"
#include "engine/materials/film.hpp"
#include "engine/materials/fluid_state.hpp"
#include "engine/model/bore.hpp"

namespace stillground::bore {

/// Resistances of the films at the wetted walls, per length [K m/W], in the order that the loop's file gives; of U's
/// [0] alone, inside a leg.
using Films = std::array<double, 3>;

/// What flows how in a loop's pipes at one temperature, and the films that it makes.
struct PipeFlow {
  double reynolds = 0;  ///< the lowest of the passages
  materials::Regime regime = materials::Regime::standing;
  Films films{};
  double velocity = 0;  ///< mean over the cross-section, the fastest of the passages [m/s]
};

/// Steady resistances of a bore's modes (see Mode), per length, and where what lies between fluid and wall stores heat
/// in each: 0 at the wall end, 1 at the fluid. Of two equal opposite modes the second is left to the first.
struct ModeResistances {
  std::array<double, most_streams> resistance{};  ///< [K m/W]; [0] is R_b
  std::array<double, most_streams> share{};       ///< mean; of an odd mode root mean square, on one side
  std::array<double, most_streams> wall{};        ///< of odd modes: mean of the bore wall on that side
  double spread = 0;                              ///< of the even mode about its share
};

/// What a bore stores between fluid and wall, and in its streams, per length [J/(m K)].
struct Capacities {
  double grout = 0;    ///< grout and the pipes between streams and wall, whole bore
  PerStream stream{};  ///< of each stream; U's side by side count together
};

/// What a metre of bore takes to build.
struct Amounts {
  double pipe = 0;   ///< of all pipes [m]
  double fluid = 0;  ///< [m3]
  double grout = 0;  ///< [m3]
};

/// A way of the fluid between top and toe: a round pipe, an annulus, or several equal ones that share the flow.
struct Passage {
  double within = 0;     ///< outer diameter of the pipe inside an annulus [m]; 0: a round pipe
  double diameter = 0;   ///< inner, of the pipe that holds the fluid [m]
  double roughness = 0;  ///< of its wall [m]
  int side_by_side = 1;  ///< so many equal ones
};

/// A pipe that a loop type has besides the bore's own.
struct OwnPipe {
  std::string name;  ///< "inner pipe"
  model::Pipe pipe;
};

/// The scenario's section `bore`, for a loop type to read its keys from.
struct LoopSection {
  const keys::Reader& keys;
  std::function<model::Pipe(std::string_view leaf)> pipe;  ///< a pipe of its own: the map at that key
};

/// All that tells one loop type from another; the rest of the engine knows streams and modes alone. One object a type,
/// without state, in the type's own file, where a forgotten member does not compile. `bore` is always a bore with a
/// loop of this type.
class LoopType {
 public:
  virtual ~LoopType() = default;

  // What a scenario says of it.

  /// Its rows of the table of keys, paths "bore.KEY". A row that several types share stands with each.
  virtual std::span<const keys::Key> own_keys() const = 0;

  /// The loop of a scenario; of `bore` diameter and pipe are known. InputError where it does not fit into the bore.
  virtual model::Loop read(const LoopSection& section, const model::Bore& bore) const = 0;

  virtual std::vector<OwnPipe> own_pipes(const model::Loop& loop) const = 0;

  /// What a metre of bore takes to build.
  virtual Amounts amounts(const model::Bore& bore) const = 0;

  /// The ways that the fluid takes one after the other, each between top and toe.
  virtual std::vector<Passage> passages(const model::Bore& bore) const = 0;

  // Films and steady resistances.

  /// Reynolds number, films and velocity where `mass_flow` [kg/s, >= 0; 0: the fluid stands] goes through the bore.
  virtual PipeFlow flow(const model::Bore& bore, double mass_flow, const materials::FluidState& state) const = 0;

  /// The films' part of R_b [K m/W]: legs side by side, or the annulus' outer wall.
  virtual double film_part(const Films& films) const = 0;

  /// Steady resistances in ground of `ground_conductivity` [W/(m K)]. Pipe walls are counted by the pipe's own
  /// conductivity. A measured resistance (model::Bore::resistance) is not looked at. Throws InputError when the legs do
  /// not fit into the bore.
  virtual ModeResistances resistances(const model::Bore& bore, double ground_conductivity,
                                      const Films& films) const = 0;

  /// True if the resistances follow films[0] alone and cost a multipole solution (0.6 ms of work, up to 5 ms when legs
  /// touch): a march then keeps them for films 2 % apart. False if they are closed forms, to be asked for each time.
  virtual bool worth_keeping() const = 0;

  /// R_a [K m/W], between what goes down and what goes up: T_down - T_up = q_a R_a.
  virtual double internal_resistance(const ModeResistances& modes) const = 0;

  // Storage and network.

  /// Times that the fluid goes down and up.
  virtual std::size_t passes(const model::Loop& loop) const = 0;

  /// Capacities of a bore filled with fluid of `fluid_heat_capacity`, volumetric [J/(m3 K)].
  virtual Capacities capacities(const model::Bore& bore, double fluid_heat_capacity) const = 0;

  /// Which streams each mode reads and what it gives them. `ground_capacity`: rho c of the ground times the bore's
  /// cross-section [J/(m K)].
  virtual Network network(const model::Loop& loop, const ModeResistances& modes, const Capacities& capacities,
                          double ground_capacity) const = 0;
};

/// Each type's object, defined in its own file.
#define STILLGROUND_DECLARE(type, word, what) const LoopType& type_of(const model::type& loop);
STILLGROUND_LOOP_TYPES(STILLGROUND_DECLARE)
#undef STILLGROUND_DECLARE

/// The type of a loop.
const LoopType& loop_type(const model::Loop& loop);

/// A row of the table of loop types.
struct NamedLoopType {
  std::string_view word;  ///< the scenario's
  std::string_view what;  ///< "a pipe within a pipe"
  const LoopType& type;
};

/// Every loop type, in the table's order.
std::span<const NamedLoopType> loop_types();

}  // namespace stillground::bore
