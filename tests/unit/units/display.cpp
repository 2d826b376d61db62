#include "engine/units/display.hpp"

#include "engine/base/where.hpp"
#include "engine/units/quantity.hpp"
#include "tests/catch.hpp"

using namespace stillground;
using Catch::Matchers::WithinRel;

TEST_CASE("What a US reader is shown, read back as a quantity, is the figure that was kept", "[unit]") {
  struct Case {
    std::string_view kept;
    std::string_view as_input;  ///< the kept unit as a scenario would write it
    units::Dimension dimension;
  };
  using D = units::Dimension;
  const auto [kept, as_input, dimension] = GENERATE(
      Case{"degC", "degC", D::temperature}, Case{"K", "K", D::temperature_difference},
      Case{"K/decade", "K/decade", D::temperature_rate}, Case{"m", "m", D::length}, Case{"mm", "mm", D::length},
      Case{"L s-1", "L/s", D::volume_flow}, Case{"W", "W", D::power}, Case{"kW", "kW", D::power},
      Case{"J", "J", D::energy}, Case{"MWh", "MWh", D::energy}, Case{"W m-1 K-1", "W/(m K)", D::conductivity},
      Case{"J m-3 K-1", "J/(m3 K)", D::volumetric_heat_capacity}, Case{"K m W-1", "K m/W", D::resistance_per_length},
      Case{"kPa", "kPa", D::pressure}, Case{"bar", "bar", D::pressure});
  const units::Shown shown = units::shown_in(kept, UnitSystem::us);
  REQUIRE(shown.units != kept);
  const Where nowhere{};
  const double before = units::conversion(as_input, dimension, nowhere)(12.5);
  const double after = units::conversion(shown.units, dimension, nowhere)(shown(12.5));
  CHECK_THAT(after, WithinRel(before, 1e-7));  // UDUNITS-2 has some factors to seven digits
}

TEST_CASE("An SI reader is shown a figure as it is kept, and nobody a unit that the table does not know", "[unit]") {
  CHECK(units::shown_in("degC", UnitSystem::si).units == "degC");
  CHECK(units::shown_in("degC", UnitSystem::si)(11.8) == 11.8);
  CHECK(units::shown_in("year", UnitSystem::us).units == "year");
  CHECK(units::shown_in("kWh", UnitSystem::us)(3) == 3);
}

TEST_CASE("A difference of temperatures has no zero of its own", "[unit]") {
  CHECK(units::text(10, "degC", 1, UnitSystem::us) == "50.0 degF");
  CHECK(units::text(10, "K", 1, UnitSystem::us) == "18.0 degF");
}

TEST_CASE("A figure is printed with its unit as people write it", "[unit]") {
  CHECK(units::text(0.113, "K m W-1", 3, UnitSystem::si) == "0.113 K m/W");
  CHECK(units::text(120, "m", 0, UnitSystem::us) == "394 ft");
  CHECK(units::text(-0.001, "K", 2, UnitSystem::si) == "0.00 K");
}
