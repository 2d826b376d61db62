#include "engine/materials/fluid.hpp"

#include <fmt/format.h>

#include <cmath>
#include <limits>

#include "engine/base/temperature.hpp"
#include "engine/materials/mixture.hpp"
#include "engine/materials/parts.hpp"
#include "engine/materials/water.hpp"
#include "engine/units/display.hpp"

namespace stillground::materials {
namespace {

/// Null: water.
const Mixture* mixture_of(model::Antifreeze base) {
  switch (base) {
    case model::Antifreeze::none:
      return nullptr;
#define STILLGROUND_CASE(name, word) \
  case model::Antifreeze::name:      \
    return &name;
      STILLGROUND_ANTIFREEZES(STILLGROUND_CASE)
#undef STILLGROUND_CASE
  }
  return nullptr;
}

/// Null where the fluid is plain water: without antifreeze the mixture's polynomials are extrapolated, and water's own
/// formulas hold.
const Mixture* mixture_in(const model::Fluid& fluid) {
  return fluid.fraction == 0 ? nullptr : mixture_of(fluid.base);
}

// Mass fraction of phi parts by volume of the antifreeze and 1 - phi of water.
double from_volume(double phi, double antifreeze_density) {
  const double water_density = water_state(mixing_temperature).density;
  return phi * antifreeze_density / (phi * antifreeze_density + (1 - phi) * water_density);
}

double to_volume(double x, double antifreeze_density) {
  const double water_density = water_state(mixing_temperature).density;
  return x * water_density / (x * water_density + (1 - x) * antifreeze_density);
}

}  // namespace

const char* fluid_name(model::Antifreeze base) {
  for (const model::NamedAntifreeze& row : model::antifreezes) {
    if (row.base == base) return row.word;
  }
  return "water";
}

const char* fluid_caution(model::Antifreeze base) {
  const Mixture* mixture = mixture_of(base);
  return mixture ? mixture->caution : "";
}

double mass_fraction(const model::Fluid& fluid, const Place& place) {
  const Mixture* mixture = mixture_of(fluid.base);
  if (!mixture) return 0;
  const bool by_volume = fluid.basis == model::Fluid::Basis::volume;
  if (by_volume && mixture->pure_density == 0) {
    throw InputError(
        place, "fluid.volume_fraction",
        fmt::format("{} is a salt, which has no volume of its own (give mass_fraction)", fluid_name(fluid.base)));
  }
  const double most =
      by_volume ? to_volume(mixture->largest_fraction, mixture->pure_density) : mixture->largest_fraction;
  // A volume fraction that stands for the largest by mass passes through two divisions.
  if (!(fluid.fraction >= 0 && fluid.fraction <= most * (1 + 1e-12))) {
    throw InputError(place, by_volume ? "fluid.volume_fraction" : "fluid.mass_fraction",
                     fmt::format("{} is outside the range of the properties of {}: 0 to {:.3g}", fluid.fraction,
                                 fluid_name(fluid.base), most));
  }
  return by_volume ? from_volume(fluid.fraction, mixture->pure_density) : fluid.fraction;
}

double largest_mass_fraction(model::Antifreeze base) {
  const Mixture* mixture = mixture_of(base);
  return mixture ? mixture->largest_fraction : 0;
}

FluidState fluid_state(const model::Fluid& fluid, double temperature) {
  const Mixture* mixture = mixture_in(fluid);
  return mixture ? mixture_state(*mixture, temperature, mass_fraction(fluid)) : water_state(temperature);
}

FluidParts parts_of(const model::Fluid& fluid, double volume) {
  const double x = mass_fraction(fluid);
  const double mass = volume * fluid_state(fluid, mixing_temperature).density;
  const Mixture* mixture = mixture_in(fluid);
  const bool salt = mixture && mixture->pure_density == 0;
  return {.mass = mass,
          .antifreeze_mass = x * mass,
          .antifreeze_volume = salt      ? std::numeric_limits<double>::quiet_NaN()
                               : mixture ? x * mass / mixture->pure_density
                                         : 0.0,
          .water_volume = (1 - x) * mass / water_state(mixing_temperature).density};
}

double freezing_point(const model::Fluid& fluid) {
  const Mixture* mixture = mixture_in(fluid);
  return mixture ? mixture_freezing_point(*mixture, mass_fraction(fluid)) : zero_celsius;
}

double boiling_point(const model::Fluid& fluid) {
  const Mixture* mixture = mixture_in(fluid);
  return mixture ? mixture->boiling_point : zero_celsius + 100;
}

ValidRange valid_range(const model::Fluid& fluid) {
  const Mixture* mixture = mixture_in(fluid);
  return {freezing_point(fluid), mixture ? mixture->warmest : water_warmest};
}

std::vector<Warning> fluid_warnings(const model::Fluid& fluid, double coldest, double warmest, const Place& place,
                                    UnitSystem system) {
  std::vector<Warning> warnings;
  const ValidRange range = valid_range(fluid);
  const auto shown = [system](double kelvin) { return units::text(kelvin - zero_celsius, "degC", 1, system); };
  const std::string name = fluid_name(fluid.base);
  const std::string held = fmt::format("properties of this fluid are known from {} to {} and held beyond",
                                       shown(range.coldest), shown(range.warmest));
  if (coldest < range.coldest) {
    warnings.push_back({place,
                        fmt::format("the fluid ({}) falls to {}, below its freezing point of {}", name, shown(coldest),
                                    shown(range.coldest)),
                        held});
  }
  if (warmest > range.warmest) {
    warnings.push_back({place, fmt::format("the fluid ({}) rises to {}", name, shown(warmest)), held});
  }
  const double x = mass_fraction(fluid);
  if (mixture_in(fluid) && x < least_fitted_fraction) {
    warnings.push_back(
        {place, fmt::format("{:.3g} of {} by mass is below the fractions its data cover", x, name),
         fmt::format("fits begin near {:.2g} by mass, below they lead towards water", least_fitted_fraction)});
  }
  return warnings;
}

}  // namespace stillground::materials
