#include <string>

#include "engine/units/quantity.hpp"
#include "tests/catch.hpp"

using namespace stillground;
using units::Dimension;
using units::to_si;

namespace {

double si(const std::string& text, Dimension dimension) {
  return to_si(text, dimension, {});
}

struct Row {
  const char* text;
  Dimension dimension;
  double value;
};

void check(const Row& row, double tolerance) {
  CAPTURE(row.text);
  CHECK(si(row.text, row.dimension) == Approx(row.value).epsilon(tolerance).margin(0));
}

}  // namespace

// Source: NIST SP 811 (2008), appendix B.8, factors to seven figures (from memory); the tolerance is half their last
// one.
TEST_CASE("Published conversion factors hold", "[units]") {
  const Row rows[] = {
      {"1 in", Dimension::length, 0.0254},
      {"1 ft", Dimension::length, 0.3048},
      {"1 Btu/(h ft degF)", Dimension::conductivity, 1.730735},
      {"1 Btu/(h ft2 degF)", Dimension::film_coefficient, 5.678263},
      {"1 Btu/h", Dimension::power, 0.2930711},
      {"1 Btu/(h ft2)", Dimension::heat_flow_per_area, 3.154591},
      {"1 Btu", Dimension::energy, 1055.056},
      {"1 kWh", Dimension::energy, 3.6e6},
      {"1 ton of refrigeration", Dimension::power, 3516.853},
      {"1 gpm", Dimension::volume_flow, 6.309020e-5},
      {"1 ft3/min", Dimension::volume_flow, 4.719474e-4},
      {"1 psi", Dimension::pressure, 6894.757},
      {"1 bar", Dimension::pressure, 1e5},
      {"1 inHg", Dimension::pressure, 3386.389},
      {"1 ftH2O", Dimension::pressure, 2989.067},
      {"1 ft2/h", Dimension::diffusivity, 2.580640e-5},
      {"1 h ft degF/Btu", Dimension::resistance_per_length, 1.895634 * 0.3048},
      {"1 degF", Dimension::temperature_difference, 0.5555556},
  };
  for (const Row& row : rows) check(row, 5e-7);
}

// Computed from the exact definitions (foot, pound, Btu): tolerance is round-off.
TEST_CASE("Both unit systems write the same quantity", "[units]") {
  const double btu = 1055.05585262, foot = 0.3048;
  check({"33 Btu/(ft3 degF)", Dimension::volumetric_heat_capacity, 33 * btu / (foot * foot * foot) * 1.8}, 1e-14);
  check({"400 ft", Dimension::length, 121.92}, 1e-14);
  check({"6 in", Dimension::length, 0.1524}, 1e-14);
  check({"5.5 gpm", Dimension::volume_flow, 5.5 * 231 * 0.0254 * 0.0254 * 0.0254 / 60}, 1e-14);
  check({"12 MBH", Dimension::power, 12000 * btu / 3600}, 1e-14);
  check({"1 ton", Dimension::power, 12000 * btu / 3600}, 1e-14);
  check({"0.35 L/s", Dimension::volume_flow, 0.35e-3}, 1e-14);
  check({"21 L/min", Dimension::volume_flow, 0.35e-3}, 1e-14);
  check({"1.26 m3/h", Dimension::volume_flow, 0.35e-3}, 1e-14);
  check({"2.2 MJ/(m3 K)", Dimension::volumetric_heat_capacity, 2.2e6}, 1e-14);
  check({"1 mm2/s", Dimension::diffusivity, 1e-6}, 1e-14);
  check({"120 MWh", Dimension::energy, 120 * 3.6e9}, 1e-14);
  check({"110 psia", Dimension::pressure, 110 * 0.45359237 * 9.80665 / (0.0254 * 0.0254)}, 1e-12);
}

TEST_CASE("A temperature has an offset, a difference has none", "[units]") {
  CHECK(si("54 degF", Dimension::temperature) == Approx(285.3722222222).epsilon(1e-12));
  CHECK(si("12 degC", Dimension::temperature) == Approx(285.15).epsilon(1e-14));
  CHECK(si("-2 degC", Dimension::temperature) == Approx(271.15).epsilon(1e-14));
  CHECK(si("285.15 K", Dimension::temperature) == 285.15);
  CHECK(si("54 F", Dimension::temperature) == si("54 degF", Dimension::temperature));
  CHECK(si("9 K", Dimension::temperature_difference) == 9);
  CHECK(si("9 degC", Dimension::temperature_difference) == 9);
  CHECK(si("9 degF", Dimension::temperature_difference) == Approx(5).epsilon(1e-14));
  CHECK(si("9 F", Dimension::temperature_difference) == Approx(5).epsilon(1e-14));
}

// The run's year has 365 days; UDUNITS-2 alone would use the tropical year, 0.07 % longer.
TEST_CASE("A year is 365 days and a decade ten of them", "[units]") {
  CHECK(si("1 year", Dimension::time) == 31536000);
  CHECK(si("1 yr", Dimension::time) == 31536000);
  CHECK(si("2 decades", Dimension::time) == 2 * 315360000.0);
  CHECK(si("0.2 K/decade", Dimension::temperature_rate) == Approx(0.2 / 315360000.0).epsilon(1e-14));
  CHECK(si("0.036 degF/year", Dimension::temperature_rate) == Approx(0.02 / 31536000.0).epsilon(1e-13));
  CHECK(si("30 min", Dimension::time) == 1800);
  CHECK(si("1 h", Dimension::time) == 3600);
}

TEST_CASE("A fraction may stand alone or be in per cent", "[units]") {
  CHECK(si("0.2", Dimension::fraction) == 0.2);
  CHECK(si("20 %", Dimension::fraction) == Approx(0.2).epsilon(1e-15));
  CHECK(si("20%", Dimension::fraction) == Approx(0.2).epsilon(1e-15));
  CHECK(si("20 percent", Dimension::fraction) == Approx(0.2).epsilon(1e-15));
}

TEST_CASE("The trade's ways of writing one conductivity all mean it", "[units]") {
  const char* ways[] = {"2.3 W/(m K)",    "2.3 W/m/K",    "2.3 W/(m.K)",   "2.3 W/(m*K)",  "2.3 W/m-K",
                        "2.3 W/m K",      "2.3 W/mK",     "2.3 W m-1 K-1", "2.3 W/m·K",    "2.3 W/(m·K)",
                        "2.3 W/(m degC)", "2.3 W/m/degC", "2.3 W/(m °C)",  "2.3 W/(m-K)",  "+2.3 W/(m K)",
                        "2.3e0 W/(m K)",  "2.3W/(m K)",   "2300 mW/(m K)", "2.3 W·m⁻¹·K⁻¹"};
  for (const char* way : ways) check({way, Dimension::conductivity, 2.3}, 1e-14);
  const char* american[] = {"0.9 Btu/(h ft degF)", "0.9 Btu/h-ft-F", "0.9 Btu/(hr ft F)",    "0.9 BTU/hr/ft/degF",
                            "0.9 Btu/h·ft·°F",     "0.9 btu/h ft F", "0.9 Btu/(h ft deg F)", "0.9 Btu per h ft degF"};
  for (const char* way : american)
    check({way, Dimension::conductivity, 0.9 * 1.0550558526200e3 / 3600 / 0.3048 * 1.8}, 1e-14);
}

TEST_CASE("Products, powers and signs of other alphabets are read", "[units]") {
  check({"0.11 K m/W", Dimension::resistance_per_length, 0.11}, 1e-14);
  check({"0.11 (m K)/W", Dimension::resistance_per_length, 0.11}, 1e-14);
  check({"0.11 m·K/W", Dimension::resistance_per_length, 0.11}, 1e-14);
  check({"0.11 mK/W", Dimension::resistance_per_length, 0.11}, 1e-14);
  check({"0.11 K/(W/m)", Dimension::resistance_per_length, 0.11}, 1e-14);
  check({"9 mK", Dimension::temperature_difference, 0.009}, 1e-14);
  check({"0.065 W/m²", Dimension::heat_flow_per_area, 0.065}, 1e-14);
  check({"65 mW/m^2", Dimension::heat_flow_per_area, 0.065}, 1e-14);
  check({"2.2 MJ/m³K", Dimension::volumetric_heat_capacity, 2.2e6}, 1e-14);
  check({"7 µm", Dimension::length, 7e-6}, 1e-14);
  check({"\u22122\u00a0°C", Dimension::temperature, 271.15}, 1e-14);
  check({"1.5 m2/day", Dimension::diffusivity, 1.5 / 86400}, 1e-14);
  check({"20 W m^-2 K^-1", Dimension::film_coefficient, 20}, 1e-14);
}
