#pragma once

#include <cmath>
#include <optional>

#include "engine/loop/circuits.hpp"
#include "engine/loop/cop_curve.hpp"

namespace stillground::loop {

/// What one hour asks of the ground.
struct Demand {
  double heating = 0;         ///< heat the building takes through the heat pump [W], >= 0
  double cooling = 0;         ///< heat the building gives off through the heat pump [W], >= 0
  double cooling_direct = 0;  ///< heat the building gives off to the fluid itself [W], >= 0
  double to_ground = 0;       ///< the ground's own load [W], positive into the ground
  double hot_water = 0;       ///< heat taken for hot water through the heat pump [W], >= 0

  bool any() const { return through_pump() || cooling_direct != 0 || to_ground != 0; }
  double size() const { return heating + hot_water + cooling + cooling_direct + std::abs(to_ground); }  ///< [W]
  bool through_pump() const { return heating != 0 || cooling != 0 || hot_water != 0; }
};

/// The heat pumps of the field; a curve is absent where there is no such duty.
struct HeatPumps {
  std::optional<CopCurve> heating{};
  std::optional<CopCurve> cooling{};
  std::optional<CopCurve> hot_water{};
};

/// Heat to the ground and its price at one EFT.
struct Exchange {
  double to_ground = 0;  ///< Q [W] = Qc (1 + 1/COP_c) - sum of Qh (1 - 1/COP_h) + direct + given
  double slope = 0;      ///< dQ/dEFT [W/K]
  double power = 0;      ///< electricity [W]
};

Exchange exchange(const Demand& demand, const HeatPumps& pumps, double eft);

/// Where field and heat pumps agree on EFT and heat.
struct OperatingPoint {
  double eft = 0;        ///< [K]
  double lft = 0;        ///< T_in of every bore [K]
  double to_ground = 0;  ///< [W]
  double power = 0;      ///< [W]
};

/// Solves (1 - gain) E - gain Q(E)/heat_rate - offset = 0 for E to round-off: bracketed Newton. The left side rises
/// with E as long as Q does not rise too fast, which `steepest_rise` lets the set-up check. It ends sooner, after the
/// first step of Newton's that is no longer than `near_enough` [K]: what is left goes with that step's square, or at a
/// bend of the COP with the step times the part by which the slope changes. Throws NumericsError without a root.
OperatingPoint operating_point(const FieldOutlet& field, const Demand& demand, const HeatPumps& pumps,
                               double near_enough = 0);

/// The steepest rise of Q with EFT at the given peak cooling [W/K], over the whole curve; 0 where it never rises.
double steepest_rise(const HeatPumps& pumps, double cooling_peak);

}  // namespace stillground::loop
