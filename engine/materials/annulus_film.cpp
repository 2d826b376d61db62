#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "engine/materials/film.hpp"

namespace stillground::materials {
namespace {

/// Developed laminar flow, one wall heated by a uniform flux: Reynolds, Lundberg & McCuen (1963) [from memory].
struct LaminarRow {
  double ratio, inner, outer;
};
constexpr std::array<LaminarRow, 8> laminar_rows = {{{0.02, 32.70, 4.734},
                                                     {0.05, 17.81, 4.792},
                                                     {0.10, 11.91, 4.834},
                                                     {0.20, 8.499, 4.883},
                                                     {0.40, 6.583, 4.979},
                                                     {0.60, 5.912, 5.099},
                                                     {0.80, 5.580, 5.240},
                                                     {1.00, 5.385, 5.385}}};

double laminar(double ratio, AnnulusWall wall) {
  const double r = std::clamp(ratio, laminar_rows.front().ratio, laminar_rows.back().ratio);
  std::size_t i = 0;
  while (i + 2 < laminar_rows.size() && laminar_rows.at(i + 1).ratio < r) ++i;
  const LaminarRow &a = laminar_rows.at(i), &b = laminar_rows.at(i + 1);
  const double part = std::log(r / a.ratio) / std::log(b.ratio / a.ratio);
  return wall == AnnulusWall::inner ? std::lerp(a.inner, b.inner, part) : std::lerp(a.outer, b.outer, part);
}

double turbulent(double reynolds, double prandtl, double ratio, AnnulusWall wall) {
  const double pipe = gnielinski(reynolds, prandtl, petukhov_friction(reynolds));
  const double factor = wall == AnnulusWall::inner ? 0.86 * std::pow(ratio, -0.16) : 1 - 0.14 * std::pow(ratio, 0.6);
  return factor * pipe;
}

}  // namespace

double annulus_reynolds(double mass_flow, double inner, double outer, double viscosity) {
  return 4 * mass_flow / (std::numbers::pi * (outer + inner) * viscosity);
}

double annulus_nusselt(double reynolds, double prandtl, double ratio, AnnulusWall wall) {
  const double slow = laminar(ratio, wall);
  if (reynolds <= laminar_end) return slow;
  if (reynolds >= turbulent_start) return turbulent(reynolds, prandtl, ratio, wall);
  return std::lerp(slow, turbulent(turbulent_start, prandtl, ratio, wall),
                   (reynolds - laminar_end) / (turbulent_start - laminar_end));
}

double annulus_film_resistance(double nusselt, double conductivity, double inner, double outer, AnnulusWall wall) {
  const double diameter = wall == AnnulusWall::inner ? inner : outer;
  return (outer - inner) / (std::numbers::pi * diameter * nusselt * conductivity);
}

}  // namespace stillground::materials
