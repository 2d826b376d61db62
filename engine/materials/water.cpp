#include "engine/materials/water.hpp"

#include <algorithm>
#include <cmath>

namespace stillground::materials {
namespace {

constexpr double gas_constant = 461.51805;  // R [J/(kg K)]

// Equation 2: specific volume [m3/kg].
double specific_volume(double temperature) {
  const double alpha = 10 / (593 - temperature);
  const double beta = 10 / (temperature - 232);
  const double hot =
      std::pow(alpha, 4) *
      (6744.58446 +
       alpha * (-222521.604 + alpha * alpha * (100231247.0 + alpha * (-1635521180.0 + alpha * 8322996580.0))));
  const double cold =
      beta * (0.00578545292 +
              beta * (-0.0153195665 +
                      beta * (0.0311337859 + beta * (-0.0423546241 + beta * (0.0338713507 + beta * -0.0119946761)))));
  return 10 * gas_constant / 1e5 * (0.0193763157 + hot + cold);
}

// Equation 4: isobaric heat capacity [J/(kg K)]; a term n of the Gibbs energy brings n (n + 1).
double isobaric_heat_capacity(double temperature) {
  const double tau = temperature / 10;
  const double alpha = 10 / (593 - temperature);
  const double beta = 10 / (temperature - 232);
  const double hot = std::pow(alpha, 6) *
                     (4 * 5 * -166147.0539 + alpha * (5 * 6 * 2708781.640 + alpha * alpha * (7 * 8 * -155719154.4)));
  const double cold =
      std::pow(beta, 4) * (2 * 3 * -0.8237426256 +
                           beta * (3 * 4 * 1.908956353 + beta * (4 * 5 * -2.017597384 + beta * 5 * 6 * 0.8546361348)));
  return -gas_constant * (-8.983025854 + tau * (hot + cold));
}

// Equation 8 [W/(m K)].
double conductivity(double temperature) {
  const double t = temperature / 300;
  return 1.6630 * std::pow(t, -1.15) - 1.7781 * std::pow(t, -3.4) + 1.1567 * std::pow(t, -6.0) -
         0.432115 * std::pow(t, -7.6);
}

// Equation 7 [Pa s].
double viscosity(double temperature) {
  const double t = temperature / 300;
  return 1e-6 * (280.68 * std::pow(t, -1.9) + 511.45 * std::pow(t, -7.7) + 61.131 * std::pow(t, -19.6) +
                 0.45903 * std::pow(t, -40.0));
}

}  // namespace

FluidState water_state(double temperature) {
  const double held = std::clamp(temperature, water_coldest, water_warmest);
  return {1 / specific_volume(held), isobaric_heat_capacity(held), conductivity(held), viscosity(held)};
}

}  // namespace stillground::materials
