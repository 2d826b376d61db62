#include "engine/materials/water.hpp"

#include <algorithm>
#include <cmath>

#include "tests/catch.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;

// Reference: water_properties.csv, IAPWS SR6-08(2011) evaluated apart from the engine, 8 digits printed.
TEST_CASE("Water has the properties of IAPWS SR6-08 from 0 to 40 degC") {
  double worst = 0;
  for (const auto& row : reference_solutions::reference_table("water_properties.csv")) {
    const materials::FluidState state = materials::water_state(std::stod(row.at("temperature")) + 273.15);
    const auto miss = [&](const char* name, double value) {
      worst = std::max(worst, std::abs(value / std::stod(row.at(name)) - 1));
    };
    miss("density", state.density);
    miss("heat_capacity", state.heat_capacity);
    miss("conductivity", state.conductivity);
    miss("viscosity", state.viscosity);
    miss("prandtl", state.prandtl());
  }
  CHECK(worst < 1e-7);  // the table's eighth digit
}

// The density's maximum lies at 3.98 degC (handbook value, e.g. CRC Handbook [from memory]).
TEST_CASE("Water is densest near 4 degC") {
  const auto density = [](double celsius) { return materials::water_state(273.15 + celsius).density; };
  CHECK(density(3.98) > density(3.7));
  CHECK(density(3.98) > density(4.3));
}

TEST_CASE("Beyond the formula's range water keeps the properties of the range's end") {
  CHECK(materials::water_state(240).viscosity == materials::water_state(materials::water_coldest).viscosity);
  CHECK(materials::water_state(500).viscosity == materials::water_state(materials::water_warmest).viscosity);
}
