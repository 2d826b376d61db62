#include "engine/materials/fluid.hpp"

#include <fmt/format.h>

#include <cassert>
#include <cmath>

#include "engine/materials/mixture.hpp"
#include "engine/materials/water.hpp"
#include "engine/units/display.hpp"

namespace stillground::materials {
namespace {

constexpr double zero_celsius = 273.15;

const MixtureCorrelation& correlation(model::Antifreeze base) {
  switch (base) {
    case model::Antifreeze::propylene_glycol:
      return propylene_glycol;
    case model::Antifreeze::ethylene_glycol:
      return ethylene_glycol;
    case model::Antifreeze::ethanol:
      return ethanol;
    case model::Antifreeze::methanol:
      return methanol;
    case model::Antifreeze::none:
      break;
  }
  assert(false && "water has no mixture correlation");
  return propylene_glycol;
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

// Without antifreeze the mixture's polynomials are extrapolated: water's own formulas hold there.
bool is_water(const model::Fluid& fluid) {
  return fluid.base == model::Antifreeze::none || fluid.fraction == 0;
}

}  // namespace

const char* fluid_name(model::Antifreeze base) {
  return base == model::Antifreeze::none ? "water" : correlation(base).name;
}

double mass_fraction(const model::Fluid& fluid, const Place& place) {
  if (fluid.base == model::Antifreeze::none) return 0;
  const MixtureCorrelation& mixture = correlation(fluid.base);
  const bool by_volume = fluid.basis == model::Fluid::Basis::volume;
  const double most = by_volume ? to_volume(largest_mixture_fraction, mixture.pure_density) : largest_mixture_fraction;
  // A volume fraction that stands for 0.6 by mass passes through two divisions.
  if (!(fluid.fraction >= 0 && fluid.fraction <= most * (1 + 1e-12))) {
    throw InputError(place, by_volume ? "fluid.volume_fraction" : "fluid.mass_fraction",
                     fmt::format("{} is outside the range of the properties of {}: 0 to {:.3g}", fluid.fraction,
                                 mixture.name, most));
  }
  return by_volume ? from_volume(fluid.fraction, mixture.pure_density) : fluid.fraction;
}

FluidState fluid_state(const model::Fluid& fluid, double temperature) {
  if (is_water(fluid)) return water_state(temperature);
  return mixture_state(correlation(fluid.base), temperature, mass_fraction(fluid));
}

double freezing_point(const model::Fluid& fluid) {
  if (is_water(fluid)) return zero_celsius;
  return mixture_freezing_point(correlation(fluid.base), mass_fraction(fluid));
}

ValidRange valid_range(const model::Fluid& fluid) {
  return {freezing_point(fluid), is_water(fluid) ? water_warmest : correlation(fluid.base).warmest};
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
  if (!is_water(fluid) && x < least_fitted_fraction) {
    warnings.push_back(
        {place, fmt::format("{:.3g} of {} by mass is below the fractions its data cover", x, name),
         fmt::format("fits begin near {:.2g} by mass, below they lead towards water", least_fitted_fraction)});
  }
  return warnings;
}

}  // namespace stillground::materials
