#include "engine/screen/circuit_regimes.hpp"

#include <numbers>

namespace stillground::screen {

CircuitRegimes::CircuitRegimes(const assembly::Assembly& assembly)
    : assembly_(assembly), ground_(assembly::mean_solid(assembly.problem)) {}

CircuitRegimes::Regime CircuitRegimes::at(double temperature, double flow) const {
  const model::Scenario& scenario = assembly_.scenario;
  const bore::LoopType& type = bore::loop_type(scenario.bore.loop);
  const bore::PipeFlow now = assembly::pipe_flow(scenario, flow, temperature);
  const bore::ModeResistances modes = type.worth_keeping()
                                          ? assembly_.sections->at(scenario, ground_.conductivity, now.films[0])
                                          : assembly::resistances(scenario, ground_.conductivity, now.films);
  const double section = std::numbers::pi / 4 * scenario.bore.diameter * scenario.bore.diameter;
  bore::Network network = type.network(scenario.bore.loop, assembly::with_measured(modes, assembly_.fluid),
                                       assembly_.fluid.capacities, ground_.heat_capacity * section);
  return {{std::move(network), flow * assembly_.fluid.heat_capacity}, now.reynolds};
}

}  // namespace stillground::screen
