#include "engine/run/regimes.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <variant>

#include "engine/bore/resistance.hpp"
#include "engine/materials/fluid.hpp"

namespace stillground::run {

namespace {

double disc(double diameter) {
  return std::numbers::pi * diameter * diameter / 4;
}

Resistances lerp(const Resistances& a, const Resistances& b, double part) {
  return {std::lerp(a.bore, b.bore, part),
          std::lerp(a.internal, b.internal, part),
          {std::lerp(a.shares.even, b.shares.even, part), std::lerp(a.shares.even_spread, b.shares.even_spread, part),
           std::lerp(a.shares.odd, b.shares.odd, part), std::lerp(a.shares.odd_wall, b.shares.odd_wall, part)}};
}

}  // namespace

LoopFluid loop_fluid(const model::Scenario& scenario, double bores, double reference) {
  const auto state = materials::fluid_state(scenario.fluid, reference);
  const model::Pipe& pipe = scenario.bore.pipe;
  const double per_bore =
      scenario.flow.amount == model::Flow::Amount::per_bore ? scenario.flow.rate : scenario.flow.rate / bores;
  LoopFluid fluid;
  fluid.reference = reference;
  fluid.density = state.density;
  fluid.heat_capacity = state.heat_capacity;
  fluid.flow_per_bore = state.density * per_bore;
  fluid.storage_per_metre = state.density * state.heat_capacity * disc(pipe.inner_diameter());
  const double pipes = 2 * disc(pipe.outer_diameter);
  fluid.grout_per_metre = scenario.bore.grout.solid.heat_capacity * (disc(scenario.bore.diameter) - pipes) +
                          pipe.heat_capacity * (pipes - 2 * disc(pipe.inner_diameter()));
  return fluid;
}

Film film(const model::Scenario& scenario, const LoopFluid& fluid, double flow_per_bore, double temperature) {
  const auto state = materials::fluid_state(scenario.fluid, temperature);
  const double inner = scenario.bore.pipe.inner_diameter();
  Film film;
  if (flow_per_bore > 0) {
    // The mass flow is that of the reference temperature: a pump moves the same fluid round and round.
    film.reynolds = materials::reynolds(fluid.flow_per_bore, inner, state.viscosity);
    film.regime = materials::regime(film.reynolds);
  }
  const double nusselt =
      flow_per_bore > 0 ? materials::nusselt(film.reynolds, state.prandtl()) : materials::standing_nusselt;
  film.resistance = materials::film_resistance(nusselt, state.conductivity);
  return film;
}

Resistances resistances(const model::Scenario& scenario, double ground_conductivity, double film_resistance) {
  const auto& loop = std::get<model::SingleU>(scenario.bore.loop);
  const auto computed = bore::single_u_resistance(scenario.bore, loop, ground_conductivity, film_resistance);
  return {scenario.bore.resistance.value_or(computed.legs.bore), computed.legs.internal, computed.shares};
}

Regimes::Regimes(const model::Scenario& scenario, const LoopFluid& fluid, const ground::Grid& grid)
    : scenario_(scenario), fluid_(fluid) {
  for (const model::Solid& solid : grid.solid) {
    const auto same = [&](const model::Solid& other) {
      return other.conductivity == solid.conductivity && other.heat_capacity == solid.heat_capacity;
    };
    const auto found = std::find_if(solids_.begin(), solids_.end(), same);
    of_layer_.push_back(static_cast<std::size_t>(found - solids_.begin()));
    if (found == solids_.end()) solids_.push_back(solid);
  }
  const Film still = film(scenario_, fluid_, 0, fluid_.reference);
  standing_ = {{0, 0, networks(at_film(still.resistance))}, still.regime};
  flowing_.march.heat_rate = fluid_.flow_per_bore * fluid_.heat_capacity;
}

std::vector<Resistances> Regimes::at_film(double film_resistance) const {
  std::vector<Resistances> result;
  for (const model::Solid& solid : solids_)
    result.push_back(resistances(scenario_, solid.conductivity, film_resistance));
  return result;
}

const std::vector<Resistances>& Regimes::at_kelvin(int kelvin) {
  const auto found = kelvins_.find(kelvin);
  if (found != kelvins_.end()) return found->second;
  const double film_resistance = film(scenario_, fluid_, fluid_.flow_per_bore, kelvin).resistance;
  return kelvins_.emplace(kelvin, at_film(film_resistance)).first->second;
}

std::vector<bore::Network> Regimes::networks(const std::vector<Resistances>& of_solid) const {
  const double section = disc(scenario_.bore.diameter);
  std::vector<bore::Network> made;
  for (std::size_t i = 0; i < solids_.size(); ++i) {
    const Resistances& r = of_solid[i];
    made.push_back(bore::make_network({r.bore, r.internal, r.shares.even, r.shares.odd, fluid_.grout_per_metre,
                                       fluid_.storage_per_metre, r.shares.even_spread, r.shares.odd_wall,
                                       solids_[i].heat_capacity * section}));
  }
  std::vector<bore::Network> per_layer;
  for (const std::size_t which : of_layer_) per_layer.push_back(made[which]);
  return per_layer;
}

const Regimes::Regime& Regimes::flowing(double temperature) {
  const int below = static_cast<int>(std::floor(temperature));
  const double part = temperature - below;
  const auto& cold = at_kelvin(below);
  const auto& warm = at_kelvin(below + 1);
  std::vector<Resistances> between;
  for (std::size_t i = 0; i < cold.size(); ++i) {
    between.push_back(lerp(cold[i], warm[i], part));
  }
  flowing_.march.networks = networks(between);
  ++flowing_.march.serial;
  flowing_.film = film(scenario_, fluid_, fluid_.flow_per_bore, temperature).regime;
  return flowing_;
}

}  // namespace stillground::run
