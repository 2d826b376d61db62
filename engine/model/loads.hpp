#pragma once

#include <cstddef>
#include <string>
#include <variant>
#include <vector>

namespace stillground::model {

/// Hourly means of one or more whole years of 8760 hours; after the last year the series starts again.
struct HourlySeries {
  std::vector<double> values;  ///< [W]; 8760 n of them; none: there is no such duty
  int first_hour = 0;          ///< hour of the year (0 = first of 1 January) of the first value

  /// Value `hour` hours after a New Year's midnight; 0 of an absent series [W].
  double at(long hour) const {
    if (values.empty()) return 0;
    const long n = static_cast<long>(values.size());
    return values[static_cast<std::size_t>((((hour - first_hour) % n) + n) % n)];
  }
};

/// What the building, or several together, takes and gives off.
struct BuildingLoads {
  HourlySeries heating;         ///< heat taken through the heat pump [W], >= 0
  HourlySeries hot_water;       ///< heat taken for hot water, through its own curve [W], >= 0
  HourlySeries cooling;         ///< heat given off through the heat pump [W], >= 0
  HourlySeries cooling_direct;  ///< heat given off to the fluid itself [W], >= 0
};

/// The ground's own load, positive into the ground.
struct GroundLoads {
  HourlySeries to_ground;
};

struct ConstantGroundLoad {
  double to_ground = 0;  ///< [W]
};

/// How the load goes up and down within an hour: `factor` times the hour's mean for `duration`, the rest even so that
/// the mean stays what it is.
struct LoadPeak {
  double factor = 1;    ///< >= 1
  double duration = 0;  ///< [s], 0..3600; factor times duration is at most an hour
};

using Loads = std::variant<BuildingLoads, GroundLoads, ConstantGroundLoad>;

struct CopPoint {
  double eft = 0;  ///< [K]
  double cop = 0;  ///< heating > 1, cooling > 0
};

/// COP against EFT: linear between the points, held beyond them. Points by rising EFT; empty without that duty.
struct HeatPump {
  std::vector<CopPoint> heating_cop{};
  std::vector<CopPoint> cooling_cop{};
  std::vector<CopPoint> hot_water_cop{};
};

struct Limit {
  enum class Quantity { eft, lft, mean_fluid };
  enum class Side { least, most };
  enum class Over { minute, hour, month };

  std::string name;  ///< the scenario's key: "eft_min"
  Quantity quantity = Quantity::eft;
  Side side = Side::least;
  Over over = Over::hour;
  double value = 0;  ///< [K]
};

}  // namespace stillground::model
