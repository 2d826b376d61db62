#include "engine/assembly/flow_regimes.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/materials/fluid.hpp"

namespace stillground::assembly {

namespace {

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
  fluid.capacities = bore::loop_type(scenario.bore.loop).capacities(scenario.bore, state.density * state.heat_capacity);
  return fluid;
}

bore::PipeFlow pipe_flow(const model::Scenario& scenario, double flow_per_bore, double temperature) {
  // The mass flow is that of the reference temperature: a pump moves the same fluid round and round.
  const auto state = materials::fluid_state(scenario.fluid, temperature);
  return bore::loop_type(scenario.bore.loop).flow(scenario.bore, flow_per_bore, state);
}

bore::ModeResistances resistances(const model::Scenario& scenario, double ground_conductivity,
                                  const bore::Films& films) {
  return bore::loop_type(scenario.bore.loop).resistances(scenario.bore, ground_conductivity, films);
}

bore::ModeResistances with_measured(bore::ModeResistances modes, const LoopFluid& fluid) {
  modes.resistance[0] = fluid.bore_resistance.value_or(modes.resistance[0]);
  return modes;
}

bore::ModeResistances SolvedSections::at(const model::Scenario& scenario, double ground_conductivity, double film) {
  const std::pair key(ground_conductivity, film);
  {
    const std::lock_guard lock(mutex_);
    const auto found = solved_.find(key);
    if (found != solved_.end()) return found->second;
  }
  // Without the lock: another thread that asks for the same meanwhile finds the same.
  const bore::ModeResistances solved = resistances(scenario, ground_conductivity, {film});
  const std::lock_guard lock(mutex_);
  return solved_.emplace(key, solved).first->second;
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
  const bore::PipeFlow still = pipe_flow(scenario_, 0, fluid_.reference);
  fill(standing_.march, computed(still.films));
}

std::vector<bore::ModeResistances> FlowRegimes::computed(const bore::Films& films) const {
  std::vector<bore::ModeResistances> result;
  const bool kept = bore::loop_type(scenario_.bore.loop).worth_keeping();
  for (const model::Solid& solid : solids_) {
    result.push_back(kept ? sections_->at(scenario_, solid.conductivity, films[0])
                          : resistances(scenario_, solid.conductivity, films));
  }
  return result;
}

const std::vector<bore::ModeResistances>& FlowRegimes::at_node(int node) {
  const auto found = nodes_.find(node);
  if (found != nodes_.end()) return found->second;
  return nodes_.emplace(node, computed({std::exp(node_step * node)})).first->second;
}

std::vector<bore::ModeResistances> FlowRegimes::at_films(const bore::Films& films) {
  if (!bore::loop_type(scenario_.bore.loop).worth_keeping()) return computed(films);
  const int below = static_cast<int>(std::floor(std::log(films[0]) / node_step));
  const double low = std::exp(node_step * below), high = std::exp(node_step * (below + 1));
  const auto& a = at_node(below);
  const auto& b = at_node(below + 1);
  std::vector<bore::ModeResistances> result;
  for (std::size_t i = 0; i < a.size(); ++i) result.push_back(between(a[i], b[i], (films[0] - low) / (high - low)));
  return result;
}

void FlowRegimes::fill(march::FlowRegime& regime, const std::vector<bore::ModeResistances>& of_solid) const {
  const double section = std::numbers::pi / 4 * scenario_.bore.diameter * scenario_.bore.diameter;
  const bore::LoopType& type = bore::loop_type(scenario_.bore.loop);
  regime.networks.resize(solids_.size());
  for (std::size_t i = 0; i < solids_.size(); ++i) {
    regime.networks[i] = type.network(scenario_.bore.loop, with_measured(of_solid[i], fluid_), fluid_.capacities,
                                      solids_[i].heat_capacity * section);
  }
  regime.of_layer = of_layer_;
}

const FlowRegimes::Regime& FlowRegimes::flowing(double temperature, double flow, std::size_t slot) {
  while (flowing_.size() <= slot) flowing_.emplace_back();
  Regime& regime = flowing_[slot];
  const bore::PipeFlow now = pipe_flow(scenario_, flow, temperature);
  regime.march.heat_rate = flow * fluid_.heat_capacity;
  fill(regime.march, at_films(now.films));
  regime.march.version = ++versions_;
  regime.reynolds = now.reynolds;
  return regime;
}

}  // namespace stillground::assembly
