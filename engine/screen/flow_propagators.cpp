#include "engine/screen/flow_propagators.hpp"

#include <algorithm>
#include <cmath>

namespace stillground::screen {

namespace {

constexpr double between_nodes = 2;    // [K]
constexpr long parts = 16;             // of that
constexpr double between_flows = 0.1;  // ln of the ratio of flows, where these vary without steps

ground::Grid ground_of_one_solid(const assembly::Assembly& assembly) {
  ground::Grid grid;
  grid.solid = {assembly::mean_solid(assembly.problem)};
  return grid;
}

}  // namespace

FlowPropagators::FlowPropagators(const assembly::Assembly& assembly, const CircuitShape& shape,
                                 const NearGround& ground)
    : assembly_(assembly),
      circuit_(shape, ground),
      regimes_(assembly.scenario, assembly.fluid, ground_of_one_solid(assembly)) {
  const FullPropagator still = whole(regimes_.standing());
  modes_ = screen::modes(circuit_, still, whole(regimes_.flowing(assembly.fluid.reference)));
  standing_ = on_modes(circuit_, still, modes_);
}

FullPropagator FlowPropagators::whole(const assembly::FlowRegimes::Regime& regime) const {
  return over_an_hour(circuit_, circuit_.rates(regime.march.networks.front(), regime.march.heat_rate),
                      assembly_.multirate.step);
}

const FlowPropagators::Flowing& FlowPropagators::at_node(double part, Flow& flow, long node) {
  const auto found = flow.whole.find(node);
  if (found != flow.whole.end()) return found->second;
  const auto& regime =
      regimes_.flowing(static_cast<double>(node) * between_nodes, part * assembly_.fluid.flow_per_bore);
  return flow.whole.emplace(node, Flowing{on_modes(circuit_, whole(regime), modes_), regime.reynolds}).first->second;
}

const FlowPropagators::Flowing& FlowPropagators::at(double part, double temperature) {
  Flow& flow = flows_[part];
  const long place = std::lround(temperature / between_nodes * static_cast<double>(parts));
  const long node = place / parts;
  if (flow.fine.empty()) flow.first = node;
  while (node < flow.first) {
    flow.fine.insert(flow.fine.begin(), std::vector<Flowing>());
    --flow.first;
  }
  const auto slot = static_cast<std::size_t>(node - flow.first);
  if (slot >= flow.fine.size()) flow.fine.resize(slot + 1);
  std::vector<Flowing>& fine = flow.fine[slot];
  if (fine.empty()) {
    const Flowing &low = at_node(part, flow, node), &high = at_node(part, flow, node + 1);
    for (long i = 0; i < parts; ++i) {
      const double share = static_cast<double>(i) / static_cast<double>(parts);
      fine.push_back({between(low.propagator, high.propagator, share), std::lerp(low.reynolds, high.reynolds, share)});
    }
  }
  return fine[static_cast<std::size_t>(place - node * parts)];
}

const FlowPropagators::Flowing& FlowPropagators::flowing(double part, double temperature) {
  if (assembly_.scenario.flow.varies != model::Flow::Varies::with_load || part == 1) return at(part, temperature);
  const double place = -std::log(part) / between_flows;
  const double more = std::floor(place);
  const Flowing& strong = at(std::exp(-between_flows * more), temperature);
  const Flowing& weak = at(std::exp(-between_flows * (more + 1)), temperature);
  mixed_ = {between(strong.propagator, weak.propagator, place - more),
            std::lerp(strong.reynolds, weak.reynolds, place - more)};
  return mixed_;
}

}  // namespace stillground::screen
