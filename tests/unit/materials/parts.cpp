#include "engine/materials/parts.hpp"

#include <cmath>

#include "engine/materials/fluid.hpp"
#include "tests/catch.hpp"

using namespace stillground;

// Reference: 5805.7 L of 22 % propylene glycol at 15 degC weigh 5912 kg and hold 1300.7 kg of it, worked out apart from
// the engine from the density of 1018.3348 kg/m3 in single_pipes.csv.
TEST_CASE("A filling is mixed of what it weighs") {
  const model::Fluid fluid{model::Antifreeze::propylene_glycol, 0.22};
  const auto parts = materials::parts_of(fluid, 5.8057);
  CHECK(parts.mass == Approx(5912).margin(0.5));
  CHECK(parts.antifreeze_mass == Approx(1300.7).margin(0.1));
  CHECK(parts.antifreeze_volume + parts.water_volume > 5.8057);  // parts shrink as they mix
}

TEST_CASE("A mixture given by parts before mixing is mixed of these parts") {
  const model::Fluid fluid{model::Antifreeze::ethylene_glycol, 0.3, model::Fluid::Basis::volume};
  const auto parts = materials::parts_of(fluid, 2);
  CHECK(parts.antifreeze_volume / (parts.antifreeze_volume + parts.water_volume) == Approx(0.3).epsilon(1e-12));
}

TEST_CASE("Water needs no antifreeze, and a salt has no volume of its own") {
  CHECK(materials::parts_of({}, 1).antifreeze_mass == 0);
  CHECK(materials::parts_of({}, 1).water_volume == Approx(1));
  const auto salt = materials::parts_of({model::Antifreeze::potassium_acetate, 0.25}, 1);
  CHECK(std::isnan(salt.antifreeze_volume));
  CHECK(salt.antifreeze_mass == Approx(0.25 * salt.mass));
}
