#pragma once

namespace stillground::model {

/// Ground, grout or pipe wall as heat sees it.
struct Solid {
  double conductivity = 0;   ///< k [W/(m K)], > 0
  double heat_capacity = 0;  ///< rho c, volumetric [J/(m3 K)], > 0

  double diffusivity() const { return conductivity / heat_capacity; }  ///< alpha [m2/s]
};

}  // namespace stillground::model
