#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "engine/materials/film.hpp"

namespace stillground::materials {
namespace {

/// Developed laminar flow between `ratio` and 1 with uniform flux at one wall, the other insulated. With F(r) the part
/// of the flow within r, r dT/dr is F when the outer wall is heated and F - 1 when the inner one is; weighted with the
/// flow, that wall is above the bulk by the integral of F^2 (outer) or (1 - F)^2 (inner) over dr/r, in units of q/(2 pi
/// k).
double laminar(double ratio, AnnulusWall wall) {
  // A narrower gap leaves too few digits of F; its plates are flat.
  constexpr double narrow = 0.99, plates = 70.0 / 13;
  if (ratio > narrow) return std::lerp(laminar(narrow, wall), plates, (std::min(ratio, 1.0) - narrow) / (1 - narrow));
  const double a = std::max(ratio, 0.02);
  // Velocity 1 - r^2 - slope ln r; by s = ln r the integral is one over an even grid, for Boole's rule.
  const double start = std::log(a), slope = (1 - a * a) / start;
  const auto flow = [&](double s) {
    const double square = std::exp(2 * s);
    return square / 2 - square * square / 4 - slope * square * (s / 2 - 0.25);
  };
  const double none = flow(start), all = flow(0) - none;
  constexpr int intervals = 96;
  constexpr std::array<double, 4> weights{14, 32, 12, 32};
  double sum = 0;
  for (int i = 0; i <= intervals; ++i) {
    const double within = (flow(start * (1 - static_cast<double>(i) / intervals)) - none) / all;
    const double part = wall == AnnulusWall::inner ? 1 - within : within;
    sum += (i == 0 || i == intervals ? 7 : weights.at(static_cast<std::size_t>(i % 4))) * part * part;
  }
  const double rise = -start / intervals * 2 / 45 * sum;
  return 2 * (1 - a) / (wall == AnnulusWall::inner ? a * rise : rise);
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
