#pragma once

#include <span>
#include <vector>

#include "engine/record/frames.hpp"

/// What a stretch of hours moved and what it took: heat of building and ground, electricity, and how well it was used.
namespace stillground::energy {

/// Of any stretch of hours. Parts that the file does not tell apart are not a number.
struct Sum {
  double heating = 0;          ///< heat the building took, hot water included [J]
  double hot_water = 0;        ///< of it [J]
  double cooling = 0;          ///< heat the building gave off [J]
  double cooling_direct = 0;   ///< of it to the fluid itself, without the heat pumps [J]
  double power = 0;            ///< electricity of the heat pumps [J]
  double power_hot_water = 0;  ///< of it [J]
  double power_cooling = 0;    ///< of it [J]
  double from_ground = 0;      ///< sum of the hours in which the fluid took heat out of the ground [J], >= 0
  double into_ground = 0;      ///< sum of the hours in which it put heat in [J], >= 0
  long heating_held = 0;       ///< hours that needed the heating curve beyond its points [h]
  long hot_water_held = 0;     ///< the same of hot water [h]
  long cooling_held = 0;       ///< the same of cooling [h]
  bool curves_known = false;   ///< whether the three counts tell anything

  /// Electricity for heating, hot water left out [J].
  double power_heating() const { return power - power_hot_water - power_cooling; }

  /// Seasonal performance: heat over the electricity that it took. Not a number where it took none.
  double performance_heating() const;  ///< heating and hot water
  double performance_cooling() const;  ///< what the heat pumps cooled
  double performance() const;          ///< everything that the building took and gave off, direct cooling included

  double direct_share() const;  ///< of the cooling, 0..1; not a number without any
};

/// Sums up hours. `curves`: the heat pumps', whose points the hours' EFT may leave.
Sum sum_of(std::span<const record::Hour> hours, const std::vector<record::CopCurveRow>& curves);

/// The sum of two stretches.
Sum operator+(const Sum& a, const Sum& b);

}  // namespace stillground::energy
