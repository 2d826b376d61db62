#pragma once

#include <string_view>

namespace stillground::units {

/// What a quantity of the input may be. Inside the engine each is a plain double in the SI unit named here.
enum class Dimension {
  length,                    ///< [m]
  volume,                    ///< [m3]
  volume_flow,               ///< [m3/s]
  conductivity,              ///< [W/(m K)]
  volumetric_heat_capacity,  ///< [J/(m3 K)]
  diffusivity,               ///< [m2/s]
  temperature,               ///< absolute [K]
  temperature_difference,    ///< no offset: 9 degF are 5 K
  temperature_rate,          ///< [K/s]
  heat_flow_per_area,        ///< [W/m2]
  power,                     ///< [W]
  time,                      ///< [s]; a year has 365 days
  resistance_per_length,     ///< thermal [K m/W]
  film_coefficient,          ///< [W/(m2 K)]
  pressure,                  ///< [Pa]
  energy,                    ///< [J]
  fraction,                  ///< plain [1]; the only one that may stand without a unit
};

/// How a dimension is spoken of and what it is in SI.
struct DimensionFacts {
  std::string_view name;      ///< with its article, for messages: "a length"
  std::string_view si;        ///< as UDUNITS-2 writes it
  std::string_view examples;  ///< in both unit systems: "120 m" or "400 ft"
};

const DimensionFacts& facts(Dimension dimension);

}  // namespace stillground::units
