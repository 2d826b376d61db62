#include "engine/bore/hydraulics.hpp"

#include <algorithm>

#include "engine/bore/loop_type.hpp"
#include "engine/bore/pipes.hpp"
#include "engine/materials/film.hpp"

namespace stillground::bore {

namespace {

/// Of all side by side [m2].
double area(const Passage& way) {
  return way.side_by_side * (circle_area(way.diameter) - circle_area(way.within));
}

// f (L/d_h) rho v^2/2, d_h = d - d_within.
double loss(const Passage& way, double length, double volume_flow, const materials::FluidState& state) {
  const double velocity = volume_flow / area(way);
  const double hydraulic = way.diameter - way.within;
  const double reynolds = state.density * velocity * hydraulic / state.viscosity;
  return materials::friction_factor(reynolds, way.roughness / hydraulic) * length / hydraulic * state.density *
         velocity * velocity / 2;
}

}  // namespace

double flow_for(const model::Bore& bore, double velocity) {
  double widest = 0;
  for (const Passage& way : loop_type(bore.loop).passages(bore)) widest = std::max(widest, area(way));
  return velocity * widest;
}

double head(const model::Bore& bore, double length, double volume_flow, const materials::FluidState& state) {
  double sum = 0;
  bool down = true;
  for (const Passage& way : loop_type(bore.loop).passages(bore)) {
    const double turn = down ? return_bend * (way.diameter - way.within) : 0.0;
    sum += loss(way, length + turn, volume_flow, state);
    down = !down;
  }
  return sum;
}

}  // namespace stillground::bore
