#pragma once

#include <stillground/frames.hpp>

#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "engine/base/calendar.hpp"
#include "engine/base/unit_system.hpp"

/// Plain frames: what a run says while it goes on, in SI and kelvin. They know neither the engine nor a file format.
namespace stillground::record {

using stillground::BoreRow;
using stillground::ErrorEstimate;
using stillground::Hour;
using stillground::LimitRow;
using stillground::MinuteExtremes;
using stillground::ScreeningError;
using stillground::YearBalance;

/// The state at one instant. Shapes: rise [group][z][r], r fastest; the others [group][z]; NaN where a bore is not.
struct Snapshot {
  double time = 0;                       ///< since the start [s]
  std::vector<float> rise;               ///< each group's own temperature change [K]
  std::vector<double> undisturbed;       ///< [z] [K]
  std::vector<double> wall_temperature;  ///< [K]
  std::vector<double> fluid_down;        ///< in the middle of the cell [K]
  std::vector<double> fluid_up;          ///< the same
  std::vector<double> grout;             ///< mean over grout and pipe of the bore's cross-section [K]
  std::vector<double> fluid_heat;  ///< [group]: of the fluid in one bore above 0 degC, as the balance counts it [J]
};

/// The mean of a run-year (`fields: yearly`), same shape as a snapshot's rise.
struct YearMean {
  std::vector<float> rise;
};

/// Whatever a run says while it goes on.
using Frame = std::variant<std::vector<Hour>, Snapshot, YearMean, YearBalance>;

/// A corner of a plot of land.
struct PlanCorner {
  double x = 0, y = 0;  ///< [m]
};

/// A heat pump's COP in one duty against EFT: linear between the points, held beyond them.
struct CopCurveRow {
  std::string duty;         ///< "heating", "hot_water" or "cooling"
  std::vector<double> eft;  ///< rising [K]
  std::vector<double> cop;
};

/// All that is known before the first step.
struct Header {
  std::string title;
  std::string scenario_text;
  std::string method = "march";  ///< or "screening"
  std::string engine_version;
  std::string build;  ///< compiler and flags
  std::string
      instruction_set;  ///< of the kernels: "baseline", "avx2", "avx512"; empty in a file from before it was kept
  Date start;           ///< midnight
  int years = 0;
  double step = 0;  ///< [s]
  ErrorEstimate eft_error;
  ScreeningError screening_error;  ///< read back from a file
  double group_error = 0;  ///< bound on what merging bores into groups changes at their walls [K]; 0: nothing is merged
  std::string fields;      ///< "monthly", "yearly", "none"
  bool has_heat_pump = false;
  std::vector<CopCurveRow> cop_curves;  ///< of the duties there are; none in a file from before they were kept
  double drill_length = 0;              ///< metres to drill, as the scenario counts them [m]
  double fluid_heat_capacity = 0;       ///< c of the fluid as marched [J/(kg K)]
  std::vector<LimitRow> limits;
  std::vector<std::string> warnings;  ///< known beforehand; read back from a file: all of the run
  std::vector<std::string> cautions;  ///< what whoever builds this must mind, most pressing first
  UnitSystem units = UnitSystem::si;  ///< in which people are shown figures; the file itself is SI
  std::vector<std::pair<std::string, std::string>> inputs;  ///< file name, SHA-256
  std::vector<double> z_faces;                              ///< nz + 1, from 0 down [m]
  std::vector<double> z;                                    ///< nz centres [m]
  std::vector<double> r_faces;                              ///< nr + 1, from the bore wall out [m]
  std::vector<double> r;                                    ///< nr nodes [m]
  std::vector<double> conductivity;                         ///< [z], W/(m K)
  std::vector<double> heat_capacity;                        ///< [z], J/(m3 K)
  std::vector<BoreRow> bores;
  std::vector<PlanCorner> land;      ///< outline of the plot they stand on; empty where the scenario has none
  std::vector<std::string> sources;  ///< of the values that catalogues gave, a line each
  int groups = 0;
  std::vector<double> active_fraction;  ///< [group][z]: the part of the cell's height with a bore in it
  std::vector<double> grout_storage;    ///< heat capacity of grout and pipe per metre of bore [J/(m K)]; one per group
  std::vector<double> fluid_storage_down;  ///< of all streams that go down, per metre of bore [J/(m K)]; one per group
  std::vector<double> fluid_storage_up;    ///< of all streams that go up
};

/// What only the end of a run knows.
struct Closing {
  std::vector<float> steady_rise;       ///< [group][z][r]: steady state under the last run-year's mean heat [K]
  std::vector<std::string> warnings;    ///< found while marching
  ScreeningError screening_error;       ///< of an estimate
  double group_deviation = 0;           ///< largest difference of a bore's neighbours' effect from its group's [K]
  std::vector<MinuteExtremes> minutes;  ///< [run-year - 1]
};

}  // namespace stillground::record
