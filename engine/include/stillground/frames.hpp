#pragma once

#include <limits>
#include <string>

/// Plain values that runs and results are made of, in SI and kelvin.
namespace stillground {

/// One hour's means (sums of the stages by the integrator's own weights).
struct Hour {
  double eft = 0;             ///< fluid leaving the field [K]
  double lft = 0;             ///< fluid entering the bores [K]
  double flow = 0;            ///< whole field [kg/s]
  double heat_to_ground = 0;  ///< [W], positive into the ground
  double heating = 0;         ///< [W] heat the building takes, hot water included
  double cooling = 0;         ///< [W] heat the building gives off, direct cooling included
  double power = 0;           ///< [W] electricity of the heat pumps
  // Parts of the three; not a number in a file from before they were kept.
  double hot_water = 0;        ///< [W] of heating
  double cooling_direct = 0;   ///< [W] of cooling: to the fluid itself, without the heat pump
  double power_hot_water = 0;  ///< [W] of power
  double power_cooling = 0;    ///< [W] of power; the rest is heating's
};

/// One run-year's heat [J]: in = stored + surface + deep + residual.
struct YearBalance {
  double in = 0;        ///< put into the ground through the bores' fluid
  double stored = 0;    ///< gained by ground, grout and fluid
  double surface = 0;   ///< left through the surface
  double deep = 0;      ///< left through the grid's bottom and outer edge
  double residual = 0;  ///< what is missing
};

/// One bore of the layout.
struct BoreRow {
  double x = 0, y = 0;  ///< [m]
  double top = 0;       ///< [m]
  double depth = 0;     ///< active length [m]
  double radius = 0;    ///< [m]
  double start = 0;     ///< since the run's start [s]
  int group = 0;        ///< which group stands for it
};

/// One limit as the scenario gave it.
struct LimitRow {
  std::string name;      ///< "eft_min"
  std::string quantity;  ///< "eft", "lft" or "mean_fluid"
  bool is_least = true;  ///< least allowed, else most allowed
  std::string over;      ///< "minute", "hour" or "month"
  double value = 0;      ///< [K]
};

/// The least and the greatest EFT of any minute of a run-year, as estimated after the run. Not a number, and -1, where
/// no hour has flow.
struct MinuteExtremes {
  double eft_least = 0;  ///< [K]
  double eft_most = 0;   ///< [K]
  long hour_least = -1;  ///< of the run, in which it occurs
  long hour_most = -1;
};

/// How far an hourly EFT may be off for numerical reasons, as estimated before the run: largest absolute error over the
/// hours with flow [K]. Not a number: there is none.
struct ErrorEstimate {
  double step = 0;     ///< by the time step
  double grid = 0;     ///< by the cells
  double refresh = 0;  ///< by the interval between two sums over the neighbours
  double total = 0;    ///< by all of them at once
};

/// How far a screening estimate may lie from a march of the same scenario, as it estimates itself: largest absolute
/// difference of the EFT over hours with flow [K]. Not a number: there is none.
struct ScreeningError {
  double month = std::numeric_limits<double>::quiet_NaN();  ///< of a month's mean
  double hour = std::numeric_limits<double>::quiet_NaN();   ///< of any hour
};

}  // namespace stillground
