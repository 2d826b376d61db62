#pragma once

#include <vector>

#include "engine/screen/circuit.hpp"
#include "engine/screen/wall_history.hpp"
#include "engine/screen/walls_undisturbed.hpp"

namespace stillground::screen {

/// What drives a circuit's walls through an hour whatever its load: the temperature that each would have without the
/// hour's own heat.
class WallsAmbient {
 public:
  WallsAmbient(const CircuitShape& shape, WallsUndisturbed undisturbed, WallHistory history);

  /// Means over the circuit's metres [K].
  struct Means {
    double change = 0;     ///< within the hour
    double at_end = 0;     ///< ambient at the hour's end
    double from_heat = 0;  ///< at its start, what earlier heat makes of it
  };

  /// Writes every wall's ambient [wall] of the run's `hour`; call for all of them, from 0 on. What changes it within
  /// the hour enters as the walls' mean change, and half of how one wall's change differs from that, as of the hour's
  /// middle.
  Means enter(long hour, double* ambient);

  /// `heat` [bore] through the hour's walls, per metre [W/m], pieces side by side, 0 beyond those that there are.
  void advance(const std::vector<Pack>& heat) { history_.advance(heat); }

  /// The undisturbed walls of a bore at the run's start: [piece], K.
  std::vector<double> undisturbed_at_start();

 private:
  std::size_t pieces_;
  Pack parts_{};  // of the circuit's metres: a bore's pieces
  WallsUndisturbed undisturbed_;
  WallHistory history_;
};

}  // namespace stillground::screen
