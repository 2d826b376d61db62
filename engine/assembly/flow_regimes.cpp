#include "engine/assembly/flow_regimes.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <variant>

#include "engine/bore/resistance.hpp"
#include "engine/materials/fluid.hpp"

namespace stillground::assembly {

namespace {

/// Mean velocity of `flow` [kg/s] between two diameters [m/s].
double velocity(double flow, double density, double inner, double outer) {
  return flow / (density * std::numbers::pi / 4 * (outer * outer - inner * inner));
}

/// Flow of one pipe of a loop, and its films.
Film in_legs(const model::Pipe& pipe, double flow, const materials::FluidState& state) {
  const double reynolds = materials::reynolds(flow, pipe.inner_diameter(), state.viscosity);
  const double nusselt = flow > 0 ? materials::nusselt(reynolds, state.prandtl()) : materials::standing_nusselt;
  return {.reynolds = reynolds,
          .regime = materials::regime(reynolds),
          .films = {materials::film_resistance(nusselt, state.conductivity), 0, 0},
          .velocity = velocity(flow, state.density, 0, pipe.inner_diameter())};
}

Film of(const model::SingleU&, const model::Bore& bore, double flow, const materials::FluidState& state) {
  return in_legs(bore.pipe, flow, state);
}

Film of(const model::DoubleU& loop, const model::Bore& bore, double flow, const materials::FluidState& state) {
  const bool shared = loop.connection == model::DoubleU::Connection::parallel;
  return in_legs(bore.pipe, shared ? flow / 2 : flow, state);
}

Film of(const model::Coaxial& loop, const model::Bore& bore, double flow, const materials::FluidState& state) {
  const double inner = loop.inner.outer_diameter, outer = bore.pipe.inner_diameter();
  const double reynolds = materials::annulus_reynolds(flow, inner, outer, state.viscosity);
  const auto at = [&](materials::AnnulusWall wall) {
    const double nusselt = materials::annulus_nusselt(reynolds, state.prandtl(), inner / outer, wall);
    return materials::annulus_film_resistance(nusselt, state.conductivity, inner, outer, wall);
  };
  Film film = in_legs(loop.inner, flow, state);
  film.films.annulus_inner = at(materials::AnnulusWall::inner);
  film.films.annulus_outer = at(materials::AnnulusWall::outer);
  film.velocity = std::max(film.velocity, velocity(flow, state.density, inner, outer));
  if (reynolds < film.reynolds) {
    film.reynolds = reynolds;
    film.regime = materials::regime(reynolds);
  }
  return film;
}

/// Natural logarithm of the ratio of neighbouring film resistances.
constexpr double node_step = 0.02;

bore::ModeResistances between(const bore::ModeResistances& a, const bore::ModeResistances& b, double part) {
  bore::ModeResistances result;
  for (std::size_t m = 0; m < bore::most_streams; ++m) {
    result.resistance.at(m) = std::lerp(a.resistance.at(m), b.resistance.at(m), part);
    result.share.at(m) = std::lerp(a.share.at(m), b.share.at(m), part);
    result.wall.at(m) = std::lerp(a.wall.at(m), b.wall.at(m), part);
  }
  result.spread = std::lerp(a.spread, b.spread, part);
  return result;
}

}  // namespace

LoopFluid loop_fluid(const model::Scenario& scenario, double weights, double reference) {
  const auto state = materials::fluid_state(scenario.fluid, reference);
  const double per_bore =
      scenario.flow.amount == model::Flow::Amount::per_bore ? scenario.flow.rate : scenario.flow.rate / weights;
  LoopFluid fluid;
  fluid.reference = reference;
  fluid.density = state.density;
  fluid.heat_capacity = state.heat_capacity;
  fluid.flow_per_bore = state.density * per_bore;
  fluid.capacities = bore::capacities(scenario.bore, state.density * state.heat_capacity);
  return fluid;
}

Film film(const model::Scenario& scenario, double flow_per_bore, double temperature) {
  // The mass flow is that of the reference temperature: a pump moves the same fluid round and round.
  const auto state = materials::fluid_state(scenario.fluid, temperature);
  return std::visit([&](const auto& loop) { return of(loop, scenario.bore, flow_per_bore, state); },
                    scenario.bore.loop);
}

double film_part(const model::Loop& loop, const bore::Films& films) {
  if (std::holds_alternative<model::Coaxial>(loop)) return films.annulus_outer;
  return films.pipe / (std::holds_alternative<model::DoubleU>(loop) ? 4 : 2);
}

bore::ModeResistances resistances(const model::Scenario& scenario, double ground_conductivity,
                                  const bore::Films& films) {
  return std::visit(
      [&](const auto& loop) { return bore::mode_resistances(scenario.bore, loop, ground_conductivity, films); },
      scenario.bore.loop);
}

bore::ModeResistances with_measured(bore::ModeResistances modes, const LoopFluid& fluid) {
  modes.resistance[0] = fluid.bore_resistance.value_or(modes.resistance[0]);
  return modes;
}

bore::ModeResistances SolvedSections::at(const model::Scenario& scenario, double ground_conductivity, double film) {
  const std::lock_guard lock(mutex_);
  const std::pair key(ground_conductivity, film);
  const auto found = solved_.find(key);
  if (found != solved_.end()) return found->second;
  return solved_.emplace(key, resistances(scenario, ground_conductivity, {film, 0, 0})).first->second;
}

FlowRegimes::FlowRegimes(const model::Scenario& scenario, const LoopFluid& fluid, const ground::Grid& grid,
                         std::shared_ptr<SolvedSections> sections)
    : scenario_(scenario), fluid_(fluid), sections_(std::move(sections)) {
  for (const model::Solid& solid : grid.solid) {
    const auto same = [&](const model::Solid& other) {
      return other.conductivity == solid.conductivity && other.heat_capacity == solid.heat_capacity;
    };
    const auto found = std::find_if(solids_.begin(), solids_.end(), same);
    of_layer_.push_back(static_cast<std::size_t>(found - solids_.begin()));
    if (found == solids_.end()) solids_.push_back(solid);
  }
  const Film still = film(scenario_, 0, fluid_.reference);
  fill(standing_.march, computed(still.films));
}

std::vector<bore::ModeResistances> FlowRegimes::computed(const bore::Films& films) const {
  std::vector<bore::ModeResistances> result;
  const bool closed_form = std::holds_alternative<model::Coaxial>(scenario_.bore.loop);
  for (const model::Solid& solid : solids_) {
    result.push_back(closed_form ? resistances(scenario_, solid.conductivity, films)
                                 : sections_->at(scenario_, solid.conductivity, films.pipe));
  }
  return result;
}

const std::vector<bore::ModeResistances>& FlowRegimes::at_node(int node) {
  const auto found = nodes_.find(node);
  if (found != nodes_.end()) return found->second;
  return nodes_.emplace(node, computed({std::exp(node_step * node), 0, 0})).first->second;
}

std::vector<bore::ModeResistances> FlowRegimes::at_films(const bore::Films& films) {
  if (std::holds_alternative<model::Coaxial>(scenario_.bore.loop)) return computed(films);
  const int below = static_cast<int>(std::floor(std::log(films.pipe) / node_step));
  const double low = std::exp(node_step * below), high = std::exp(node_step * (below + 1));
  const auto& a = at_node(below);
  const auto& b = at_node(below + 1);
  std::vector<bore::ModeResistances> result;
  for (std::size_t i = 0; i < a.size(); ++i) result.push_back(between(a[i], b[i], (films.pipe - low) / (high - low)));
  return result;
}

void FlowRegimes::fill(march::FlowRegime& regime, const std::vector<bore::ModeResistances>& of_solid) const {
  const double section = std::numbers::pi / 4 * scenario_.bore.diameter * scenario_.bore.diameter;
  regime.networks.resize(solids_.size());
  for (std::size_t i = 0; i < solids_.size(); ++i) {
    regime.networks[i] = bore::loop_network(scenario_.bore.loop, with_measured(of_solid[i], fluid_), fluid_.capacities,
                                            solids_[i].heat_capacity * section);
  }
  regime.of_layer = of_layer_;
}

const FlowRegimes::Regime& FlowRegimes::flowing(double temperature, double flow, std::size_t slot) {
  while (flowing_.size() <= slot) flowing_.emplace_back();
  Regime& regime = flowing_[slot];
  const Film now = film(scenario_, flow, temperature);
  regime.march.heat_rate = flow * fluid_.heat_capacity;
  fill(regime.march, at_films(now.films));
  regime.march.version = ++versions_;
  regime.reynolds = now.reynolds;
  return regime;
}

}  // namespace stillground::assembly
