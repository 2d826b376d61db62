#pragma once

#include "engine/bore/network.hpp"

namespace stillground::bore {

/// A pipe within a pipe. The annulus exchanges with the wall through outer pipe and grout, the inner pipe with the
/// annulus alone; the inner pipe's wall has no node of its own, half of what it stores belongs to either stream.
struct ConcentricParts {
  double wall_resistance = 0;      ///< annulus to bore wall [K m/W]
  double internal_resistance = 0;  ///< inner stream to annulus [K m/W]
  double share = 0;                ///< mean temperature of outer pipe and grout over that of the annulus, steady; 0..1
  double grout_capacity = 0;       ///< grout and outer pipe [J/(m K)]
  double annulus_capacity = 0;     ///< with half of the inner pipe's wall [J/(m K)]
  double inner_capacity = 0;       ///< with half of the inner pipe's wall [J/(m K)]
  bool down_annulus = true;        ///< the annulus goes down, the inner pipe up
  double spread = 0;               ///< standard deviation about `share`
};

/// Mode 0 reads and gives the annulus: q' = (T_annulus - T_wall)/R_wall. Mode 1 passes q = (T_inner - T_annulus)/R_a
/// from the inner stream to the annulus, and stores nothing.
Network make_network(const ConcentricParts& parts);

}  // namespace stillground::bore
