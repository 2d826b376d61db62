#pragma once

#include <stillground/frames.hpp>
#include <stillground/scenario.hpp>

#include <string>
#include <vector>

namespace stillground {

/// Heat in one direction: what the building asks for, or what that moves through the bores' walls.
struct HeatFigures {
  double year = 0;  ///< mean over the run's years [J]; through the walls, per metre of active bore [J/m]
  double peak = 0;  ///< of the hour with most [W]; through the walls, per metre of active bore [W/m]
};

/// What a run of a scenario would be. SI and kelvin.
struct Plan {
  std::string title;
  Date start;
  int years = 0;
  bool screens = false;  ///< an estimate without a march: eft_error and expected_seconds are not a number
  double step = 0;       ///< [s]
  int bores = 0;
  int groups = 0;              ///< of bores that share a grid
  double active_length = 0;    ///< all bores [m]
  double drill_length = 0;     ///< metres to drill [m]
  double nearest_spacing = 0;  ///< between two bores [m]; 0 for a lone bore
  long cells = 0;              ///< of all groups together
  double conductivity = 0;     ///< of the ground, mean over the bores' active length [W/(m K)]
  double undisturbed = 0;      ///< ground temperature, mean over the bores' active length and the year [K]
  double fluid_volume = 0;     ///< in the loops [m3]
  double grout_volume = 0;     ///< [m3]
  double pipe_length = 0;      ///< in the bores, all legs [m]
  double freezing_point = 0;   ///< of the fluid [K]
  double mass_flow = 0;        ///< whole field, when it runs [kg/s]

  double reynolds = 0;              ///< at full flow, the fluid as warm as the ground; so the resistances
  double bore_resistance = 0;       ///< R_b [K m/W]
  double effective_resistance = 0;  ///< R_b* of the median bore, as a response test is read [K m/W]

  HeatFigures heating;  ///< the building takes, hot water counted
  HeatFigures cooling;  ///< the building gives off
  HeatFigures taken;    ///< through the bores' walls, out of the ground; 0 where no heat goes this way
  HeatFigures given;    ///< through the bores' walls, into the ground

  ErrorEstimate eft_error;
  double expected_seconds = 0;  ///< wall time, from a short trial march on this machine
  double expected_bytes = 0;    ///< of the result file
  std::vector<Warning> warnings;
  std::vector<std::string> cautions;  ///< what whoever builds the field must mind, most pressing first
};

/// Validates everything that a run would and says what it would do. `threads`: with which it would be run; 0: as many
/// as the machine has. Takes seconds. Throws as `run` does before its first step: InputError, NumericsError,
/// SystemError.
STILLGROUND_EXPORT Plan check(const Scenario& scenario, int threads = 0);

}  // namespace stillground
