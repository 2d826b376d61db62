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
  return {scenario.bore.resistance.value_or(computed.legs.bore), computed.legs.internal, computed.shares.even,
          computed.shares.odd};
}

Regimes::Regimes(const model::Scenario& scenario, const LoopFluid& fluid, const ground::Grid& grid)
    : scenario_(scenario), fluid_(fluid) {
  for (const model::Solid& solid : grid.solid) {
    const auto found = std::find(conductivities_.begin(), conductivities_.end(), solid.conductivity);
    of_layer_.push_back(static_cast<std::size_t>(found - conductivities_.begin()));
    if (found == conductivities_.end()) conductivities_.push_back(solid.conductivity);
  }
  const Film still = film(scenario_, fluid_, 0, fluid_.reference);
  standing_ = {{0, 0, networks(at_film(still.resistance))}, still.regime};
  flowing_.march.heat_rate = fluid_.flow_per_bore * fluid_.heat_capacity;
}

std::vector<Resistances> Regimes::at_film(double film_resistance) const {
  std::vector<Resistances> result;
  for (const double conductivity : conductivities_)
    result.push_back(resistances(scenario_, conductivity, film_resistance));
  return result;
}

const std::vector<Resistances>& Regimes::at_kelvin(int kelvin) {
  const auto found = kelvins_.find(kelvin);
  if (found != kelvins_.end()) return found->second;
  const double film_resistance = film(scenario_, fluid_, fluid_.flow_per_bore, kelvin).resistance;
  return kelvins_.emplace(kelvin, at_film(film_resistance)).first->second;
}

std::vector<bore::Network> Regimes::networks(const std::vector<Resistances>& of_ground) const {
  std::vector<bore::Network> made;
  for (const Resistances& r : of_ground) {
    made.push_back(bore::make_network(
        {r.bore, r.internal, r.even_share, r.odd_share, fluid_.grout_per_metre, fluid_.storage_per_metre}));
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
    between.push_back({std::lerp(cold[i].bore, warm[i].bore, part), std::lerp(cold[i].internal, warm[i].internal, part),
                       std::lerp(cold[i].even_share, warm[i].even_share, part),
                       std::lerp(cold[i].odd_share, warm[i].odd_share, part)});
  }
  flowing_.march.networks = networks(between);
  ++flowing_.march.serial;
  flowing_.film = film(scenario_, fluid_, fluid_.flow_per_bore, temperature).regime;
  return flowing_;
}

}  // namespace stillground::run
