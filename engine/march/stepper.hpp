#pragma once

#include "engine/march/multirate.hpp"
#include "engine/march/problem.hpp"
#include "engine/march/rates.hpp"
#include "engine/march/state.hpp"

namespace stillground::march {

/// What an hour brought: means over its steps by the integrator's own stage weights.
struct HourMeans {
  double eft = 0;        ///< mixed outlet of the field [K]
  double lft = 0;        ///< inlet of the bores [K]
  double to_ground = 0;  ///< [W]; the heat the fluid brought, m c (lft - eft) of the whole field
  double power = 0;      ///< heat pumps' electricity [W]
  double surface = 0;    ///< heat that left through the surface [W]
  double fluid = 0;      ///< mean of the fluid in the loops at the hour's end [K], see mean_fluid
};

/// Marches the field hour by hour. Virtual once an hour, never below.
class Stepper {
 public:
  virtual ~Stepper() = default;

  /// Advances the state by one hour (3600 s) under the forcing. Without flow eft and lft are the stagnant fluid's at
  /// the field's ends. The heat through each wall, summed over the hour [J per metre of height], is added to
  /// `wall_heat`
  /// ([group][z], row() entries each). Throws NumericsError.
  virtual HourMeans advance(State& state, const Forcing& forcing, Vector& wall_heat) = 0;
};

}  // namespace stillground::march
