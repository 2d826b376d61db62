#pragma once

namespace stillground::materials {

/// A liquid at one temperature.
struct FluidState {
  double density = 0;        ///< rho [kg/m3]
  double heat_capacity = 0;  ///< c [J/(kg K)]
  double conductivity = 0;   ///< k [W/(m K)]
  double viscosity = 0;      ///< mu, dynamic [Pa s]

  double prandtl() const { return viscosity * heat_capacity / conductivity; }  ///< Pr [-]
};

}  // namespace stillground::materials
