#include "engine/run/regimes.hpp"

#include <cmath>
#include <limits>
#include <numbers>
#include <variant>

#include "engine/bore/resistance.hpp"
#include "engine/materials/fluid.hpp"

namespace stillground::run {

namespace {

constexpr double band_width = 1;  // [K]
constexpr int standing_band = std::numeric_limits<int>::min();

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
    : scenario_(scenario), fluid_(fluid), grid_(grid) {}

Regimes::Band Regimes::make(double flow_per_bore, double temperature) const {
  const Film at = film(scenario_, fluid_, flow_per_bore, temperature);
  Band band{{flow_per_bore * fluid_.heat_capacity, {}}, at.regime};
  std::map<double, bore::Network> by_conductivity;
  for (std::size_t k = 0; k < grid_.nz(); ++k) {
    const double conductivity = grid_.solid[k].conductivity;
    auto found = by_conductivity.find(conductivity);
    if (found == by_conductivity.end()) {
      const auto r = resistances(scenario_, conductivity, at.resistance);
      const auto network = bore::make_network(
          {r.bore, r.internal, r.even_share, r.odd_share, fluid_.grout_per_metre, fluid_.storage_per_metre});
      found = by_conductivity.emplace(conductivity, network).first;
    }
    band.march.networks.push_back(found->second);
  }
  return band;
}

const Regimes::Band& Regimes::standing() {
  const auto found = bands_.find(standing_band);
  if (found != bands_.end()) return found->second;
  return bands_.emplace(standing_band, make(0, fluid_.reference)).first->second;
}

const Regimes::Band& Regimes::flowing(double temperature) {
  const int band = static_cast<int>(std::floor(temperature / band_width));
  const auto found = bands_.find(band);
  if (found != bands_.end()) return found->second;
  return bands_.emplace(band, make(fluid_.flow_per_bore, (band + 0.5) * band_width)).first->second;
}

}  // namespace stillground::run
