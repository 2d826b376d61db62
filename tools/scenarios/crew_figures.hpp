#pragma once

#include <cmath>
#include <string>
#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/materials/parts.hpp"

namespace stillground::scenarios {

/// What the crew adds to what the scenario says.
struct Allowances {
  double grout_waste = 0.2;  ///< part of the bore's own volume that is lost or fills washed-out ground
  double bag = 0;            ///< mixed grout that one bag makes [m3]; 0: not known
  double fill = 2e5;         ///< to which the loops are filled, at a gauge on the surface [Pa]
};

/// Equal loops.
struct LoopKind {
  long count = 0;
  double top = 0;    ///< [m]
  double toe = 0;    ///< below the surface [m]
  double grout = 0;  ///< of one bore, waste counted [m3]

  double active() const { return toe - top; }  ///< [m]
};

struct PipeAmount {
  std::string what;  ///< "loop", "inner pipe"
  model::Pipe pipe;
  int legs = 1;            ///< in a bore, each from top to toe
  double in_bores = 0;     ///< [m]
  double to_surface = 0;   ///< the same with every leg as long as to the surface [m]
  double longest_leg = 0;  ///< from the surface to the toe [m]
};

/// What one kind of polyethylene allows at the deepest toe. Pressures [Pa].
struct PipeLimits {
  std::string material;
  std::string source;
  double rating = 0;     ///< long-term, from inside
  double warmest = 0;    ///< up to which that holds [K]
  double test_most = 0;  ///< at a gauge on the surface, the pipe full of water: 1.5 times the rating at the toe
};

/// Water in the loops' pipes while they are flushed.
struct Flushing {
  double velocity = 0;  ///< in the slowest pipe [m/s]
  double flow = 0;      ///< through one bore [m3/s]
  double head = 0;      ///< of the longest bore [Pa]
};

/// What the crew must know of a field, without headers. SI and kelvin.
struct CrewFigures {
  double drill_length = 0;  ///< as the scenario counts it [m]
  double deepest = 0;       ///< toe below the surface [m]
  std::vector<LoopKind> kinds;
  std::vector<PipeAmount> pipes;
  double grout_net = 0;       ///< between pipes and bore wall, active length [m3]
  double grout = 0;           ///< with waste [m3]
  double fluid_volume = 0;    ///< in the loops [m3]
  materials::FluidParts mix;  ///< of that
  double freezing_point = 0;  ///< [K]
  Flushing flushing;
  double ratio = 0;                     ///< of the loop pipe's outside diameter to its wall
  double column = 0;                    ///< of the fluid's weight at the deepest toe [Pa]
  double water_column = 0;              ///< of the water's that it is tested with [Pa]
  double test_least = 0;                ///< 1.5 times the filling pressure, at a gauge on the surface [Pa]
  std::vector<PipeLimits> pipe_limits;  ///< by what may be printed on the loop pipe
  double trench = 0;                    ///< depth of the deepest trench [m]
};

CrewFigures crew_figures(const assembly::Assembly& assembly, const Allowances& allowances);

/// Whole bags for `grout` [m3]; 0 where a bag's yield is not known.
inline long bags(double grout, const Allowances& allowances) {
  return allowances.bag > 0 ? static_cast<long>(std::ceil(grout / allowances.bag - 1e-9)) : 0;
}

}  // namespace stillground::scenarios
