#pragma once

#include <vector>

namespace stillground::reference_solutions {

/// Three resistances in series from a mean of the streams to its end, a capacity at either node between them.
struct Chain {
  double inner = 0, middle = 0, outer = 0;        ///< [K m/W]
  double inner_capacity = 0, outer_capacity = 0;  ///< [J/(m K)]
};

/// What lies between the streams and the ground.
struct Chains {
  Chain even;  ///< from both streams' mean to the bore wall; carries all heat that leaves them
  Chain odd;   ///< from half their difference to zero; carries what the downward one gives the upward
};

/// A bore with one stream down and one up in ground of one kind, from rest at zero.
struct PlugFlowBore {
  double length = 0;         ///< [m]
  double radius = 0;         ///< of the bore [m]
  double heat_rate = 0;      ///< mass flow times specific heat where the fluid flows [W/K]
  double fluid = 0;          ///< capacity of either stream [J/(m K)]
  Chains flowing, standing;  ///< their nodes store the same
  double conductivity = 0;   ///< of the ground [W/(m K)]
  double heat_capacity = 0;  ///< of the ground [J/(m3 K)]
};

/// What an hour does.
struct PlugFlowHour {
  bool flows = true;
  double heat = 0;  ///< into the fluid where it flows [W]
};

/// Hourly means of the fluid that comes back [K] in a closed loop: what comes back enters again warmer by heat over
/// heat rate at once; 0 for hours in which the fluid stands. Plug flow: in each step the fluid moves on by just one of
/// `cells` equal pieces of a leg, so that no front is smeared; before and after, for half a step each (Strang 1968
/// [from memory]), every piece exchanges heat with its own chains and rings of ground by the trapezoidal rule. No axial
/// conduction. Flow starts and stops with the step nearest to the hour.
std::vector<double> returning_fluid(const PlugFlowBore& bore, const std::vector<PlugFlowHour>& hours, int cells);

}  // namespace stillground::reference_solutions
