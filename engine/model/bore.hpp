#pragma once

#include <optional>
#include <string>
#include <variant>

#include "engine/model/solid.hpp"

namespace stillground::model {

struct Pipe {
  std::string name;           ///< entry of the catalogue, empty when given in the scenario
  double outer_diameter = 0;  ///< [m]
  double wall = 0;            ///< thickness [m]
  double conductivity = 0;    ///< [W/(m K)]
  double heat_capacity = 0;   ///< volumetric [J/(m3 K)]
  double roughness = 0;       ///< [m]
  std::string source{};       ///< where the catalogue's entry has its values from; empty when given in the scenario

  double inner_diameter() const { return outer_diameter - 2 * wall; }  ///< [m]
};

/// One U: two legs on a diameter, placed symmetrically about the bore's axis.
struct SingleU {
  double leg_spacing = 0;  ///< centre to centre [m]
};

/// Two U's in one bore, their four legs on a square about its axis.
struct DoubleU {
  enum class Connection {
    parallel,  ///< both U's share the bore's flow
    series     ///< the whole flow goes through one after the other
  };

  double leg_spacing = 0;  ///< between the centres of legs that stand opposite each other [m]
  Connection connection = Connection::parallel;
  bool opposite_legs = false;  ///< a U's own legs stand opposite each other; otherwise side by side
};

/// A pipe within a pipe, both on the bore's axis: the bore's pipe is the outer one.
struct Coaxial {
  enum class Down { annulus, inner };

  Pipe inner;
  Down down = Down::annulus;  ///< where the fluid goes down
};

using Loop = std::variant<SingleU, DoubleU, Coaxial>;

/// The table of loop types: each alternative of Loop, the scenario's word for it, and what it is. All else about a type
/// stands in its file in bore/, see bore::LoopType. An alternative without a row does not compile.
// clang-format off
#define STILLGROUND_LOOP_TYPES(row) \
  row(SingleU, "single-u", "one U") \
  row(DoubleU, "double-u", "two U's") \
  row(Coaxial, "coaxial", "a pipe within a pipe")
// clang-format on

struct Grout {
  std::string name;
  Solid solid;
  std::string source{};  ///< as of Pipe
};

/// What a thermal response test has brought.
struct MeasuredResistance {
  double effective = 0;           ///< R_b* [K m/W], with what the legs give each other on the way
  std::optional<double> at_flow;  ///< through the test's bore [m3/s]; the scenario's full flow if absent
  std::optional<double> over;     ///< active length of the test's bore [m]; Bore::depth if absent
};

/// The make of every bore of the field; a position may have a depth and top of its own.
struct Bore {
  double top = 0;       ///< depth at which the active bore starts [m]
  double depth = 0;     ///< active length below the top [m]
  double diameter = 0;  ///< [m]
  Loop loop;
  Pipe pipe;
  Grout grout;
  std::optional<MeasuredResistance> resistance;  ///< the local R_b that it leaves replaces the computed one
  bool drilled_from_trench = false;  ///< metres to drill are counted from the trench's floor, not the surface
};

}  // namespace stillground::model
