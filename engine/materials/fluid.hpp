#pragma once

#include <vector>

#include "engine/base/errors.hpp"
#include "engine/base/unit_system.hpp"
#include "engine/materials/fluid_state.hpp"
#include "engine/model/fluid.hpp"

namespace stillground::materials {

/// Temperature at which the parts of a fraction by volume are measured [K].
inline constexpr double mixing_temperature = 288.15;

/// "water", "propylene glycol", ...
const char* fluid_name(model::Antifreeze base);

/// What to mind who handles it: "Antifreeze: ..."; empty for water.
const char* fluid_caution(model::Antifreeze base);

/// Mass fraction of the antifreeze, 0..largest_mass_fraction; of water 0. A fraction by volume counts the parts before
/// mixing at 15 degC. Throws InputError at `place` when the fraction is not finite, negative or beyond the source's
/// range, or given by volume of a salt.
double mass_fraction(const model::Fluid& fluid, const Place& place = {});

/// End of the source's range, 0..1; of water 0.
double largest_mass_fraction(model::Antifreeze base);

/// Properties at `temperature` [K]. Outside the range of the fluid's correlation (see valid_range) held at the range's
/// end. Throws InputError as mass_fraction does.
FluidState fluid_state(const model::Fluid& fluid, double temperature);

/// Temperature at which ice begins to form [K]. Throws InputError as mass_fraction does.
double freezing_point(const model::Fluid& fluid);

/// Where the fluid may begin to boil at atmospheric pressure [K]: water's boiling point, which glycols and salts raise;
/// of an alcohol its own.
double boiling_point(const model::Fluid& fluid);

/// Temperatures [K] between which the correlation follows the fluid.
struct ValidRange {
  double coldest = 0;  ///< the freezing point
  double warmest = 0;
};
ValidRange valid_range(const model::Fluid& fluid);

/// What a user should know who runs this fluid between `coldest` and `warmest` [K]: freezing, temperatures or fractions
/// outside the correlation's range. `place` is where the scenario names the fluid. Empty when all is well.
std::vector<Warning> fluid_warnings(const model::Fluid& fluid, double coldest, double warmest, const Place& place = {},
                                    UnitSystem system = UnitSystem::si);

}  // namespace stillground::materials
