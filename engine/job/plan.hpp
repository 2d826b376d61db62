#pragma once

#include <optional>
#include <string>
#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/assembly/ground_heat.hpp"
#include "engine/assembly/response_test.hpp"
#include "engine/assembly/work_periods.hpp"
#include "engine/base/calendar.hpp"
#include "engine/base/errors.hpp"
#include "engine/base/unit_system.hpp"
#include "engine/model/scenario.hpp"
#include "engine/record/frames.hpp"

namespace stillground::job {

/// Rates at one flow level and fluid temperature.
struct FlowCase {
  std::string what;              ///< "at the ground's", which the temperature follows
  double fluid_temperature = 0;  ///< [K]
  double reynolds = 0;
  std::string regime;               ///< "laminar", "transitional", "turbulent"
  double bore_resistance = 0;       ///< R_b [K m/W]
  double internal_resistance = 0;   ///< R_a [K m/W]
  double effective_resistance = 0;  ///< R_b* of the median bore, as a response test is read: see ResponseTest [K m/W]
};

/// One direction of the loads.
struct LoadSummary {
  double year = 0;        ///< mean over the run's years [J]
  double first_year = 0;  ///< [J]
  double peak = 0;        ///< largest hour [W]
};

/// What flows through one bore.
struct BoreFlow {
  double volume = 0;    ///< [m3/s]
  double velocity = 0;  ///< mean, in the pipe; of a coaxial loop the faster of inner pipe and annulus [m/s]
};

/// Values that come from a catalogue instead of from the scenario.
struct CatalogueValues {
  std::string of;      ///< "ground layer 2", "grout", "pipe"
  std::string entry;   ///< its name
  std::string source;  ///< as the entry says
};

/// What `check` prints: what will be run, without running it.
struct Plan {
  std::string title;
  Date start;
  int years = 0;
  bool screens = false;  ///< an estimate without a march: eft_error and expected_seconds are not a number
  double step = 0;       ///< [s]
  int bores = 0;
  int groups = 0;
  int equal_groups = 0;        ///< before any were merged
  double group_error = 0;      ///< bound on what merging changes at a bore wall [K]; 0: none are merged
  double active_length = 0;    ///< all bores [m]
  double drill_length = 0;     ///< [m]
  double nearest_spacing = 0;  ///< between two bores [m]; 0 for a lone bore
  int radial_cells = 0;
  int axial_cells = 0;
  long cells = 0;                             ///< of all groups together
  double outer_radius = 0;                    ///< [m]
  double grid_depth = 0;                      ///< [m]
  double conductivity = 0;                    ///< mean over the bores' active length [W/(m K)]
  double undisturbed = 0;                     ///< mean over the bores' active length and the year [K]
  double fluid_volume = 0;                    ///< in the loops [m3]
  double grout_volume = 0;                    ///< [m3]
  double pipe_length = 0;                     ///< in the bores, all legs [m]
  double freezing_point = 0;                  ///< of the fluid [K]
  double mass_flow = 0;                       ///< whole field, when it runs [kg/s]
  BoreFlow full_flow;                         ///< of the bore that is given most, when it is given most
  BoreFlow least_flow;                        ///< the least that runs through any bore
  std::vector<assembly::WorkPeriod> periods;  ///< of the run, in each of which the same bores work
  LoadSummary heating;                        ///< heat the building takes, hot water counted
  LoadSummary hot_water;                      ///< its part of that
  LoadSummary cooling;                        ///< heat the building gives off
  double heat_to_ground = 0;                  ///< yearly, where known without a run [J]; NaN if it depends on the EFT
  assembly::GroundHeats ground_heats;
  std::vector<CatalogueValues> sources;
  std::vector<FlowCase> flow_cases;
  std::optional<assembly::ResponseTest> response_test;
  record::ErrorEstimate eft_error;    ///< see forecast/error_estimate.hpp
  double expected_seconds = 0;        ///< wall time on `threads` threads, from a short trial march on this machine
  double expected_bytes = 0;          ///< of the result file
  UnitSystem units = UnitSystem::si;  ///< in which people are shown figures
  std::vector<Warning> warnings;
  std::vector<std::string> cautions;  ///< see cautions.hpp
};

/// What a run's result takes at the most, before packing, which saves a part that depends on the loads [bytes].
double result_bytes(const assembly::Assembly& assembly);

/// Validates everything that a run would and says what it would do. Throws as run() does before its first step.
Plan check(const model::Scenario& scenario, int threads = 0);

}  // namespace stillground::job
