#include "engine/bore/pipes.hpp"

#include <numbers>

namespace stillground::bore {

double circle_area(double diameter) {
  return std::numbers::pi * diameter * diameter / 4;
}

double mean_velocity(double mass_flow, double density, double inner, double outer) {
  return mass_flow / (density * std::numbers::pi / 4 * (outer * outer - inner * inner));
}

PipeFlow flow_in_pipe(const model::Pipe& pipe, double mass_flow, const materials::FluidState& state) {
  const double reynolds = materials::reynolds(mass_flow, pipe.inner_diameter(), state.viscosity);
  const double nusselt = mass_flow > 0 ? materials::nusselt(reynolds, state.prandtl()) : materials::standing_nusselt;
  return {.reynolds = reynolds,
          .regime = materials::regime(reynolds),
          .films = {materials::film_resistance(nusselt, state.conductivity)},
          .velocity = mean_velocity(mass_flow, state.density, 0, pipe.inner_diameter())};
}

double pipe_resistance(const model::Pipe& pipe, double film_resistance) {
  return film_resistance +
         materials::pipe_wall_resistance(pipe.inner_diameter(), pipe.outer_diameter, pipe.conductivity);
}

double grout_capacity(const model::Bore& bore, int pipes) {
  const double cut = pipes * circle_area(bore.pipe.outer_diameter);
  return bore.grout.solid.heat_capacity * (circle_area(bore.diameter) - cut) +
         bore.pipe.heat_capacity * (cut - pipes * circle_area(bore.pipe.inner_diameter()));
}

Amounts pipe_amounts(const model::Bore& bore, int pipes) {
  return {static_cast<double>(pipes), pipes * circle_area(bore.pipe.inner_diameter()),
          circle_area(bore.diameter) - pipes * circle_area(bore.pipe.outer_diameter)};
}

}  // namespace stillground::bore
