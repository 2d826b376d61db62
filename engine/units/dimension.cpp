#include "engine/units/dimension.hpp"

#include <array>
#include <cstddef>

namespace stillground::units {

const DimensionFacts& facts(Dimension dimension) {
  // In the order of the enumeration.
  static constexpr std::array<DimensionFacts, 17> table = {{
      {"a length", "m", R"x("120 m" or "400 ft")x"},
      {"a volume", "m3", R"x("85 L" or "22 gal")x"},
      {"a volume flow", "m3 s-1", R"x("0.35 L/s" or "5.5 gpm")x"},
      {"a thermal conductivity", "W m-1 K-1", R"x("2.3 W/(m K)" or "1.3 Btu/(h ft degF)")x"},
      {"a volumetric heat capacity", "J m-3 K-1", R"x("2.2 MJ/(m3 K)" or "33 Btu/(ft3 degF)")x"},
      {"a thermal diffusivity", "m2 s-1", R"x("1.0 mm2/s" or "0.93 ft2/day")x"},
      {"a temperature", "K", R"x("12 degC" or "54 degF")x"},
      {"a temperature difference", "K", R"x("9 K" or "16 degF")x"},
      {"a rate of temperature", "K s-1", R"x("0.2 K/decade" or "0.04 degF/year")x"},
      {"a heat flow per area", "W m-2", R"x("0.065 W/m2" or "0.02 Btu/(h ft2)")x"},
      {"a power", "W", R"x("13.5 kW" or "46000 Btu/h")x"},
      {"a time", "s", R"x("30 min" or "1 h")x"},
      {"a thermal resistance per length", "K m W-1", R"x("0.11 K m/W" or "0.19 h ft degF/Btu")x"},
      {"a film coefficient", "W m-2 K-1", R"x("15 W/(m2 K)" or "2.6 Btu/(h ft2 degF)")x"},
      {"a pressure", "Pa", R"x("760 kPa" or "110 psi")x"},
      {"an energy", "J", R"x("120 MWh" or "410 MMBtu")x"},
      {"a fraction", "1", R"x("0.2" or "20 %")x"},
  }};
  return table.at(static_cast<std::size_t>(dimension));
}

}  // namespace stillground::units
