#pragma once

#include <string>
#include <variant>
#include <vector>

namespace stillground::model {

/// Hourly means of one or more whole years of 8760 hours; after the last year the file starts again.
struct HourlySeries {
  std::vector<double> values;  ///< [W]; 8760 n of them
  int first_hour = 0;          ///< hour of the year (0 = first of 1 January) of the first value
};

/// What the building takes and gives off, through a heat pump.
struct BuildingLoads {
  HourlySeries heating;         ///< heat the building takes [W], >= 0; empty if there is none
  HourlySeries cooling;         ///< heat the building gives off [W], >= 0; empty if there is none
  bool cooling_direct = false;  ///< cooling by the fluid itself, without the heat pump
};

/// The ground's own load, positive into the ground.
struct GroundLoads {
  HourlySeries to_ground;
};

struct ConstantGroundLoad {
  double to_ground = 0;  ///< [W]
};

using Loads = std::variant<BuildingLoads, GroundLoads, ConstantGroundLoad>;

struct CopPoint {
  double eft = 0;  ///< [K]
  double cop = 0;  ///< heating > 1, cooling > 0
};

/// COP against EFT: linear between the points, held beyond them. Points by rising EFT; empty without that duty.
struct HeatPump {
  std::vector<CopPoint> heating_cop;
  std::vector<CopPoint> cooling_cop;
};

struct Limit {
  enum class Quantity { eft, lft, mean_fluid };
  enum class Side { least, most };
  enum class Over { hour, month };

  std::string name;  ///< the scenario's key: "eft_min"
  Quantity quantity = Quantity::eft;
  Side side = Side::least;
  Over over = Over::hour;
  double value = 0;  ///< [K]
};

}  // namespace stillground::model
