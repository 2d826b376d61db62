#pragma once

#include <array>

#include "engine/materials/fluid_state.hpp"
#include "engine/model/fluid.hpp"

namespace stillground::materials {

/// c[i][j] of y = sum c_ij (T - T_base)^i (x - x_base)^j, T [K], x mass fraction.
using MixturePolynomial = std::array<std::array<double, 6>, 4>;

/// An antifreeze in water: its properties and what to mind of it. Each has its object in a file of its own.
///
/// Source: Melinder (2010), Properties of secondary working fluids for indirect systems (IIR/IIF), coefficients read in
/// the open general-purpose property library CoolProp (incompressible liquids, MIT licence), not in the book. Between
/// two editions of the data the differences are up to 0.1 % (density), 1 to 3.5 % (heat capacity), 0.5 %
/// (conductivity), 3 to 4 % (viscosity).
struct Mixture {
  double base_temperature = 0;           ///< T_base [K]
  double base_fraction = 0;              ///< x_base [-]
  MixturePolynomial density;             ///< [kg/m3]
  MixturePolynomial heat_capacity;       ///< [J/(kg K)]
  MixturePolynomial conductivity;        ///< [W/(m K)]
  MixturePolynomial ln_viscosity;        ///< of the viscosity in Pa s
  std::array<double, 6> freezing_point;  ///< in x alone [K]
  double warmest = 0;                    ///< end of the source's range [K]
  double largest_fraction = 0;           ///< end of the source's range, by mass, 0..1
  double pure_density = 0;   ///< of the antifreeze without water at 15 degC [kg/m3], for fractions by volume; 0: a salt
  double boiling_point = 0;  ///< where a mixture may begin to boil at atmospheric pressure [K]
  const char* caution = "";  ///< to whoever handles it
};

/// The fits begin near 0.1 to 0.15 by mass [from memory]: below that they lead towards water.
inline constexpr double least_fitted_fraction = 0.1;

#define STILLGROUND_DECLARE(name, word) extern const Mixture name;
STILLGROUND_ANTIFREEZES(STILLGROUND_DECLARE)
#undef STILLGROUND_DECLARE

/// Freezing point [K] at mass fraction x, 0 < x <= largest_fraction.
double mixture_freezing_point(const Mixture& mixture, double fraction);

/// Properties at `temperature` [K] and mass fraction `fraction`, 0 < x <= largest_fraction. Below the freezing point
/// and above `mixture.warmest` they are held at the range's end, so that a search for a temperature always meets finite
/// values.
FluidState mixture_state(const Mixture& mixture, double temperature, double fraction);

}  // namespace stillground::materials
