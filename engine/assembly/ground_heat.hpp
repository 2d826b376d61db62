#pragma once

namespace stillground::assembly {

struct Assembly;

/// What the loads will move through the bores' walls in one direction, as far as it can be known without a run. All
/// per metre of active bore at work in that hour; of loads in both directions within an hour, what is left over.
struct GroundHeat {
  double peak = 0;        ///< of the hour with most [W/m]
  double year = 0;        ///< in a year, mean over the run [J/m]
  double difference = 0;  ///< between entering and leaving fluid in the peak's hour [K]
  double eft = 0;         ///< at which the heat pumps' COP is taken for the peak [K]
  long hour = -1;         ///< of the run, the first with that peak; -1: no heat goes this way

  bool any() const { return hour >= 0; }
};

struct GroundHeats {
  GroundHeat taken;  ///< out of the ground: heating
  GroundHeat given;  ///< into the ground: cooling
};

/// Of a building the ground is given Qc (1 + 1/COP_c) and what is cooled directly, and Qh (1 - 1/COP_h) is taken from
/// it, hot water alike. The COP of the peaks is that of the EFT limit (least for `taken`, most for `given`), the COP of
/// the year that of the undisturbed ground's temperature, which stands for a limit that is not set.
GroundHeats ground_heats(const Assembly& assembly);

/// What bores of this trade usually carry. Common practice, no source: some 20 to 70 W/m are taken, up to 100 W/m (150
/// ft of bore per ton of cooling) are given, and up to 150 kWh/m a year in either direction.
inline constexpr double usual_taken = 70;          // [W/m]
inline constexpr double usual_given = 100;         // [W/m]
inline constexpr double usual_year = 150 * 3.6e6;  // [J/m]

/// What a peak that is no bore's may come from, in words; empty below three times the usual.
const char* likely_slip(double peak, double usual);

}  // namespace stillground::assembly
