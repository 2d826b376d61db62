#include "engine/materials/fluid.hpp"

#include <limits>

#include "engine/materials/mixture.hpp"
#include "engine/materials/water.hpp"
#include "tests/catch.hpp"

using namespace stillground;
using model::Antifreeze;
using model::Fluid;
using stillground::testing::StartsWith;

TEST_CASE("Twenty parts of ethanol by volume are fewer by mass, twenty of ethylene glycol more") {
  // Densities of the parts at 15 degC: 794.5 and 1117 against water's 999.1 kg/m3 (sources in the fluids' files).
  CHECK(materials::mass_fraction({Antifreeze::ethanol, 0.2, Fluid::Basis::volume}) ==
        Approx(0.2 * 794.5 / (0.2 * 794.5 + 0.8 * 999.1)).epsilon(1e-5));
  CHECK(materials::mass_fraction({Antifreeze::ethylene_glycol, 0.2, Fluid::Basis::volume}) ==
        Approx(0.2 * 1117 / (0.2 * 1117 + 0.8 * 999.1)).epsilon(1e-5));
}

TEST_CASE("A fluid given by volume equals the fluid given by the same parts in mass") {
  const Fluid by_volume{Antifreeze::propylene_glycol, 0.25, Fluid::Basis::volume};
  const Fluid by_mass{Antifreeze::propylene_glycol, materials::mass_fraction(by_volume), Fluid::Basis::mass};
  CHECK(materials::fluid_state(by_volume, 278.15).viscosity == materials::fluid_state(by_mass, 278.15).viscosity);
  CHECK(materials::freezing_point(by_volume) == materials::freezing_point(by_mass));
}

TEST_CASE("Water with no antifreeze in it is water") {
  CHECK(materials::fluid_state({Antifreeze::methanol, 0, Fluid::Basis::mass}, 290).density ==
        materials::water_state(290).density);
  CHECK(materials::freezing_point({}) == 273.15);
  CHECK(materials::mass_fraction({}) == 0);
}

TEST_CASE("A fraction beyond the source's range is refused where the scenario gives it") {
  const Place place{"site.yaml", 31, 9};
  const double none = std::numeric_limits<double>::quiet_NaN();
  for (const double fraction : {0.61, -0.1, 25.0, none}) {
    CAPTURE(fraction);
    CHECK_THROWS_AS(materials::mass_fraction({Antifreeze::ethanol, fraction, Fluid::Basis::mass}, place), InputError);
  }
  CHECK_THROWS_WITH(
      materials::mass_fraction({Antifreeze::ethanol, 25, Fluid::Basis::mass}, place),
      "site.yaml:31:9: fluid.mass_fraction: 25 is outside the range of the properties of ethanol: 0 to 0.6");
  CHECK_THROWS_WITH(materials::mass_fraction({Antifreeze::ethanol, 0.9, Fluid::Basis::volume}, place),
                    StartsWith("site.yaml:31:9: fluid.volume_fraction: 0.9"));
  CHECK_NOTHROW(materials::mass_fraction({Antifreeze::ethanol, 0.6, Fluid::Basis::mass}));
}

TEST_CASE("A salt has no fraction by volume, and ends where its source does") {
  CHECK_THROWS_WITH(materials::mass_fraction({Antifreeze::potassium_acetate, 0.2, Fluid::Basis::volume}),
                    Catch::Contains("fluid.volume_fraction: potassium acetate is a salt"));
  CHECK_THROWS_WITH(materials::mass_fraction({Antifreeze::potassium_acetate, 0.46, Fluid::Basis::mass}),
                    Catch::Contains("0 to 0.45"));
}

TEST_CASE("A fluid that freezes, boils its range away or is nearly water brings a warning, a sound one none") {
  const Fluid glycol{Antifreeze::propylene_glycol, 0.2, Fluid::Basis::mass};
  CHECK(materials::fluid_warnings(glycol, 271.15, 303.15).empty());
  CHECK(materials::fluid_warnings(glycol, 261.15, 303.15).size() == 1);
  CHECK(materials::fluid_warnings({Antifreeze::ethanol, 0.2, Fluid::Basis::mass}, 271.15, 318.15).size() == 1);
  CHECK(materials::fluid_warnings({Antifreeze::ethanol, 0.05, Fluid::Basis::mass}, 275.15, 300.15).size() == 1);
  CHECK(materials::fluid_warnings({}, 272.15, 300.15).size() == 1);
  CHECK(materials::fluid_warnings({}, 273.65, 300.15).empty());
}

TEST_CASE("Every fluid has finite, positive properties in and beyond its range") {
  std::vector<Antifreeze> all{Antifreeze::none};
  for (const model::NamedAntifreeze& row : model::antifreezes) all.push_back(row.base);
  for (const Antifreeze base : all) {
    for (double x = 0; x <= materials::largest_mass_fraction(base); x += 0.05) {
      for (double temperature = 230; temperature < 390; temperature += 5) {
        const auto s = materials::fluid_state({base, x, Fluid::Basis::mass}, temperature);
        const bool sound = s.density > 800 && s.density < 1300 && s.heat_capacity > 2000 && s.heat_capacity < 5000 &&
                           s.conductivity > 0.2 && s.conductivity < 0.7 && s.viscosity > 1e-4 && s.viscosity < 10;
        CAPTURE(materials::fluid_name(base), x, temperature, s.density, s.heat_capacity, s.conductivity, s.viscosity);
        REQUIRE(sound);
      }
    }
  }
}
