#pragma once

#include <string>
#include <vector>

#include "engine/model/scenario.hpp"

namespace stillground::validation {

/// A lone bore in uniform ground under heat that comes and goes by whole hours, from rest.
struct RestartCase {
  std::string name;
  model::Scenario scenario;
  std::vector<double> heat;    ///< [hour] into the ground [W]; 0: fluid stands
  std::vector<long> restarts;  ///< hours looked at
};

/// A U, a U in poor grout, and a coaxial loop in laminar flow, after standing for one hour and for three.
std::vector<RestartCase> restart_cases();

/// Mean EFT of every minute of the hours looked at [K], by the engine and by plug flow along the characteristics
/// (reference_solutions/plug_flow_minutes); `hourly`: the mean of each such hour as the run's own march has it.
struct RestartMinutes {
  std::vector<double> ours, reference;
  std::vector<double> hourly;
};

RestartMinutes march_restarts(const RestartCase& restart);

/// A peak of the load within one hour, after more than a day of even heat.
struct PeakMinutes {
  double from = 0;                      ///< when in the hour it begins [s]
  std::vector<double> ours, reference;  ///< mean EFT of each minute of the hour and until its fluid has come back [K]
};

/// The restart cases' bores under 50 W/m drawn without end: one of each place that the engine tries, by the engine and
/// by plug flow.
std::vector<PeakMinutes> march_peaks(const RestartCase& bore, const model::LoadPeak& peak);

}  // namespace stillground::validation
