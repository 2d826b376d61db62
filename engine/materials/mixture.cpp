#include "engine/materials/mixture.hpp"

#include <algorithm>
#include <cmath>

namespace stillground::materials {
namespace {

double polynomial(const std::array<double, 6>& c, double x) {
  double sum = 0;
  for (auto term = c.rbegin(); term != c.rend(); ++term) sum = sum * x + *term;
  return sum;
}

double polynomial(const MixturePolynomial& c, double t, double x) {
  double sum = 0;
  for (auto row = c.rbegin(); row != c.rend(); ++row) sum = sum * t + polynomial(*row, x);
  return sum;
}

}  // namespace

double mixture_freezing_point(const Mixture& mixture, double fraction) {
  return polynomial(mixture.freezing_point, fraction - mixture.base_fraction);
}

FluidState mixture_state(const Mixture& mixture, double temperature, double fraction) {
  const double held = std::clamp(temperature, mixture_freezing_point(mixture, fraction), mixture.warmest);
  const double t = held - mixture.base_temperature;
  const double x = fraction - mixture.base_fraction;
  return {polynomial(mixture.density, t, x), polynomial(mixture.heat_capacity, t, x),
          polynomial(mixture.conductivity, t, x), std::exp(polynomial(mixture.ln_viscosity, t, x))};
}

}  // namespace stillground::materials
