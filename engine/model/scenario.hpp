#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "engine/base/calendar.hpp"
#include "engine/base/errors.hpp"
#include "engine/base/unit_system.hpp"
#include "engine/model/bore.hpp"
#include "engine/model/field.hpp"
#include "engine/model/fluid.hpp"
#include "engine/model/ground.hpp"
#include "engine/model/loads.hpp"

namespace stillground::model {

/// What decides the cells; a value of 0 (or none) leaves it to the engine.
struct GridChoice {
  enum class Level { normal, fine };

  Level level = Level::normal;
  int radial_cells = 0;      ///< from the bore wall to the outer radius
  double end_cell = 0;       ///< height of the cells at the bore's two ends [m]
  double growth = 0;         ///< of heights away from them, 1 < growth <= 1.3
  double largest_cell = 0;   ///< along the bore [m]
  double outer_radius = 0;   ///< [m]
  double bottom_margin = 0;  ///< below the deepest toe [m]
};

/// How long, how finely, and which accelerations are switched off.
struct Run {
  enum class Method { march, screening };
  enum class Groups { symmetry, merged, none };
  enum class Stepper { automatic, reference };
  enum class Clocks { automatic, one };

  Date start;
  int years = 0;
  Method method = Method::march;
  double step = 1800;      ///< [s], divides 3600
  double refresh = 86400;  ///< of the neighbours' sum [s], a multiple of 3600
  GridChoice grid;
  Groups groups = Groups::symmetry;
  double group_error = 0.05;  ///< bound on what merging changes at a bore wall, mean over its length [K]
  Stepper stepper = Stepper::automatic;
  Clocks clocks = Clocks::automatic;

  bool screens() const { return method == Method::screening; }
};

enum class RecordFields { monthly, yearly, none };

/// A file that the scenario reads, and the digest of what it held.
struct InputFile {
  std::string name;    ///< as the scenario names it
  std::string sha256;  ///< hexadecimal
};

/// Everything that is to be computed: SI, kelvin, no text with units. Built once by config::read, then const.
struct Scenario {
  std::string title;
  Ground ground;
  Bore bore;
  Layout layout;
  Fluid fluid;
  Flow flow;
  Loads loads;
  std::optional<LoadPeak> peak;  ///< in every hour with load; none: loads are even within the hour
  std::optional<HeatPump> heat_pump;
  Run run;
  std::vector<Limit> limits;
  RecordFields fields = RecordFields::monthly;
  UnitSystem units = UnitSystem::si;  ///< in which people are shown figures

  std::string file;                     ///< path as given
  std::string text;                     ///< the whole file
  std::vector<InputFile> inputs;        ///< the scenario itself first
  std::map<std::string, Place> places;  ///< by dotted key ("bore.depth"), for faults found after reading
  std::vector<Warning> warnings;        ///< found while reading

  /// Where a key was given; the scenario's file alone if it was not.
  Place place(const std::string& key) const {
    const auto found = places.find(key);
    return found == places.end() ? Place{file, 0, 0} : found->second;
  }
};

}  // namespace stillground::model
