#include "engine/materials/film.hpp"

#include <cmath>
#include <numbers>

namespace stillground::materials {
namespace {

using std::numbers::ln10;
using std::numbers::pi;

// Between the ends of the transition: `laminar` at Re 2300, `turbulent` at Re 4000.
double blend(double reynolds, double laminar, double turbulent) {
  const double share = (reynolds - laminar_end) / (turbulent_start - laminar_end);
  return (1 - share) * laminar + share * turbulent;
}

// Colebrook (1939): 1/sqrt(f) = -2 log10(e/3.7 + 2.51/(Re sqrt(f))), by Newton's method in x = 1/sqrt(f). The equation
// is convex in x, so three steps from Haaland's estimate (within 2 %) reach round-off; the loop ends when nothing
// changes.
double colebrook(double reynolds, double roughness) {
  const double a = roughness / 3.7;
  const double b = 2.51 / reynolds;
  double x = -1.8 * std::log10(std::pow(a, 1.11) + 6.9 / reynolds);
  for (int step = 0; step < 20; ++step) {
    const double argument = a + b * x;
    const double change = (x + 2 * std::log10(argument)) / (1 + 2 * b / (ln10 * argument));
    x -= change;
    if (std::abs(change) < 1e-15 * x) break;
  }
  return 1 / (x * x);
}

}  // namespace

double reynolds(double mass_flow, double inner_diameter, double viscosity) {
  return 4 * mass_flow / (pi * inner_diameter * viscosity);
}

Regime regime(double reynolds) {
  if (reynolds <= 0) return Regime::standing;
  if (reynolds <= laminar_end) return Regime::laminar;
  return reynolds < turbulent_start ? Regime::transition : Regime::turbulent;
}

const char* regime_name(Regime regime) {
  switch (regime) {
    case Regime::standing:
      return "standing";
    case Regime::laminar:
      return "laminar";
    case Regime::transition:
      return "transition";
    case Regime::turbulent:
      return "turbulent";
  }
  return "";
}

double petukhov_friction(double reynolds) {
  const double root = 0.790 * std::log(reynolds) - 1.64;
  return 1 / (root * root);
}

double gnielinski(double reynolds, double prandtl, double friction) {
  const double eighth = friction / 8;
  return eighth * (reynolds - 1000) * prandtl / (1 + 12.7 * std::sqrt(eighth) * (std::cbrt(prandtl * prandtl) - 1));
}

double nusselt(double reynolds, double prandtl) {
  switch (regime(reynolds)) {
    case Regime::standing:
      return standing_nusselt;
    case Regime::laminar:
      return laminar_nusselt;
    case Regime::transition:
      return blend(reynolds, laminar_nusselt, gnielinski(turbulent_start, prandtl, petukhov_friction(turbulent_start)));
    case Regime::turbulent:
      break;
  }
  return gnielinski(reynolds, prandtl, petukhov_friction(reynolds));
}

double friction_factor(double reynolds, double relative_roughness) {
  if (reynolds <= laminar_end) return 64 / reynolds;
  if (reynolds >= turbulent_start) return colebrook(reynolds, relative_roughness);
  return blend(reynolds, 64 / laminar_end, colebrook(turbulent_start, relative_roughness));
}

double film_resistance(double nusselt, double conductivity) {
  return 1 / (pi * nusselt * conductivity);
}

double pipe_wall_resistance(double inner_diameter, double outer_diameter, double conductivity) {
  return std::log(outer_diameter / inner_diameter) / (2 * pi * conductivity);
}

}  // namespace stillground::materials
