#include "engine/units/display.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/base/fixed.hpp"

namespace stillground::units {

namespace {

// Exact definitions: foot 0.3048 m, US gallon 231 in3, pound 0.45359237 kg, international-table Btu 1055.05585262 J,
// ton of refrigeration 12 000 Btu/h, psi 6894.757293168 Pa.
constexpr double foot = 0.3048;
constexpr double gallon = 3.785411784e-3;
constexpr double pound = 0.45359237;
constexpr double btu = 1055.05585262;
constexpr double btu_per_hour = btu / 3600;
constexpr double ton = 12000 * btu_per_hour;
constexpr double psi = 6894.757293168;
constexpr double degree = 9.0 / 5.0;  // degF in a kelvin

struct Row {
  std::string_view kept;
  Shown us;
};

constexpr std::array rows = {
    Row{"degC", {"degF", degree, 32}},
    Row{"K", {"degF", degree, 0}},
    Row{"K m-1", {"degF/ft", degree* foot, 0}},
    Row{"K/decade", {"degF/decade", degree, 0}},
    Row{"m", {"ft", 1 / foot, 0}},
    Row{"mm", {"in", 1e-3 / (foot / 12), 0}},
    Row{"m2", {"ft2", 1 / (foot * foot), 0}},
    Row{"m3", {"gal", 1 / gallon, 0}},
    Row{"L", {"gal", 1e-3 / gallon, 0}},
    Row{"L s-1", {"gpm", 60e-3 / gallon, 0}},
    Row{"m3 s-1", {"gpm", 60 / gallon, 0}},
    Row{"m s-1", {"ft/s", 1 / foot, 0}},
    Row{"kg", {"lb", 1 / pound, 0}},
    Row{"kg s-1", {"lb/s", 1 / pound, 0}},
    Row{"W", {"ton", 1 / ton, 0}},
    Row{"kW", {"ton", 1e3 / ton, 0}},
    Row{"W m-1", {"Btu/(h ft)", foot / btu_per_hour, 0}},
    Row{"J", {"kBtu", 1e-3 / btu, 0}},
    Row{"MWh", {"kBtu", 3.6e6 / btu, 0}},
    Row{"kWh m-1", {"kBtu/ft", 3600 * foot / btu, 0}},
    Row{"W m-1 K-1", {"Btu/(h ft degF)", foot / (btu_per_hour * degree), 0}},
    Row{"J m-3 K-1", {"Btu/(ft3 degF)", foot* foot* foot / (btu * degree), 0}},
    Row{"K m W-1", {"h ft degF/Btu", degree* btu_per_hour / foot, 0}},
    Row{"kPa", {"psi", 1e3 / psi, 0}},
    Row{"bar", {"psi", 1e5 / psi, 0}},
};

struct Print {
  std::string_view kept, printed;
};

constexpr std::array prints = {
    Print{"W m-1 K-1", "W/(m K)"}, Print{"K m W-1", "K m/W"}, Print{"J m-3 K-1", "J/(m3 K)"}, Print{"W m-1", "W/m"},
    Print{"kWh m-1", "kWh/m"},     Print{"L s-1", "L/s"},     Print{"m3 s-1", "m3/s"},        Print{"kg s-1", "kg/s"},
    Print{"m s-1", "m/s"},         Print{"K m-1", "K/m"},
};

}  // namespace

Shown shown_in(std::string_view units, UnitSystem system) {
  const Shown as_kept{units};
  if (system == UnitSystem::si) return as_kept;
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return row.kept == units; });
  return found == rows.end() ? as_kept : found->us;
}

std::string_view printed_unit(std::string_view units) {
  const auto found =
      std::find_if(prints.begin(), prints.end(), [&](const Print& print) { return print.kept == units; });
  return found == prints.end() ? units : found->printed;
}

std::string text(double kept, std::string_view units, int digits, UnitSystem system) {
  const Shown shown = shown_in(units, system);
  const double value = shown(kept);
  if (!std::isfinite(value)) return "-";
  return fmt::format("{} {}", fixed(value, digits), printed_unit(shown.units));
}

}  // namespace stillground::units
