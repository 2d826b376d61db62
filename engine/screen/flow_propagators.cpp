#include "engine/screen/flow_propagators.hpp"

#include <algorithm>
#include <cmath>

namespace stillground::screen {

namespace {

constexpr double between_nodes = 4;    // [K]
constexpr long slots = 32;             // of that
constexpr double between_flows = 0.1;  // ln of the ratio of flows, where these vary without steps
constexpr long eighths = 8;            // of the former, where a film bends
constexpr long quarters = 4;           // of the latter
constexpr double bend = 1.1;           // ratio of the films at two nodes

/// With eight walls they fill 40 rows, with twelve 56: whole packs.
Eigen::Index mode_count(const CircuitShape& shape) {
  return shape.bores == 1 ? 30 : 42;
}

bool unlike(double a, double b) {
  return std::max(a, b) > bend * std::min(a, b);
}

long floored(long place, long by) {
  return place >= 0 ? place / by : -((-place + by - 1) / by);
}

}  // namespace

FlowPropagators::FlowPropagators(const assembly::Assembly& assembly, const CircuitShape& shape,
                                 const NearGround& ground, const CircuitWalls& walls)
    : assembly_(assembly), circuit_(shape, ground), regimes_(assembly) {
  const double reference = assembly.fluid.reference, full = assembly.fluid.flow_per_bore;
  const CircuitAtFlow standing = regimes_.at(reference, 0).circuit;
  std::vector<CircuitAtFlow> seen{standing, regimes_.at(reference, full).circuit};
  if (assembly.scenario.flow.varies != model::Flow::Varies::never)
    seen.push_back(regimes_.at(reference, 0.4 * full).circuit);
  modes_ = screen::modes(circuit_, seen, assembly.multirate.step, walls, mode_count(shape));
  standing_ = made(standing);
}

HourlyPropagator FlowPropagators::made(const CircuitAtFlow& at) const {
  const Rates rates = circuit_.rates(at.network, at.heat_rate);
  return {circuit_, over_an_hour(circuit_, rates, assembly_.multirate.step, modes_), modes_};
}

HourlyPropagator::Places FlowPropagators::places() const {
  return {static_cast<std::size_t>(modes_.cols()), static_cast<std::size_t>(circuit_.walls())};
}

double FlowPropagators::film(Flow& flow, long place) const {
  const auto found = flow.films.find(place);
  if (found != flow.films.end()) return found->second;
  const double temperature = static_cast<double>(place) * between_nodes / eighths;
  const auto now = assembly::pipe_flow(assembly_.scenario, flow.part * assembly_.fluid.flow_per_bore, temperature);
  return flow.films.emplace(place, *std::max_element(now.films.begin(), now.films.end())).first->second;
}

const FlowPropagators::Node& FlowPropagators::at_node(Flow& flow, long place) {
  const auto found = flow.whole.find(place);
  if (found != flow.whole.end()) return found->second;
  const auto regime =
      regimes_.at(static_cast<double>(place) * between_nodes / eighths, flow.part * assembly_.fluid.flow_per_bore);
  return flow.whole.emplace(place, Node{made(regime.circuit), regime.reynolds}).first->second;
}

void FlowPropagators::fill(Flow& flow, long node, std::vector<Node>& fine) {
  const long low = node * eighths;
  const long stride = unlike(film(flow, low), film(flow, low + eighths)) ? 1 : eighths;
  for (long place = low; place < low + eighths; place += stride) {
    const Node &a = at_node(flow, place), &b = at_node(flow, place + stride);
    const long between = slots * stride / eighths;
    for (long i = 0; i < between; ++i) {
      const double share = static_cast<double>(i) / static_cast<double>(between);
      fine.push_back(
          {HourlyPropagator::between(a.propagator, b.propagator, share), std::lerp(a.reynolds, b.reynolds, share)});
    }
  }
}

const FlowPropagators::Node& FlowPropagators::at(Flow& flow, double temperature) {
  const long place = std::lround(temperature / between_nodes * static_cast<double>(slots));
  const long node = floored(place, slots);
  if (flow.fine.empty()) flow.first = node;
  while (node < flow.first) {
    flow.fine.insert(flow.fine.begin(), std::vector<Node>());
    --flow.first;
  }
  const auto index = static_cast<std::size_t>(node - flow.first);
  if (index >= flow.fine.size()) flow.fine.resize(index + 1);
  std::vector<Node>& fine = flow.fine[index];
  if (fine.empty()) fill(flow, node, fine);
  return fine[static_cast<std::size_t>(place - node * slots)];
}

FlowPropagators::Flow& FlowPropagators::flow_at(long place) {
  Flow& flow = nodes_[place];
  flow.part = std::exp(-between_flows * static_cast<double>(place) / quarters);
  return flow;
}

/// Whether a film bends between a flow's node and the next.
bool FlowPropagators::bends_between_flows(long node, double temperature) {
  const auto place = static_cast<long>(std::floor(temperature / between_nodes)) * eighths;
  Flow &strong = flow_at(node * quarters), &weak = flow_at((node + 1) * quarters);
  return unlike(film(strong, place), film(weak, place)) ||
         unlike(film(strong, place + eighths), film(weak, place + eighths));
}

FlowPropagators::Flowing FlowPropagators::flowing(double part, double temperature) {
  if (assembly_.scenario.flow.varies != model::Flow::Varies::with_load || part == 1) {
    Flow& flow = stages_[part];
    flow.part = part;
    const Node& node = at(flow, temperature);
    return {{&node.propagator, nullptr}, {1, 0}, node.reynolds};
  }
  const double place = -std::log(part) / between_flows;
  const auto node = static_cast<long>(std::floor(place));
  const long stride = bends_between_flows(node, temperature) ? 1 : quarters;
  const auto low = static_cast<long>(std::floor(place * quarters / static_cast<double>(stride))) * stride;
  const double more = (place * quarters - static_cast<double>(low)) / static_cast<double>(stride);
  const Node &strong = at(flow_at(low), temperature), &weak = at(flow_at(low + stride), temperature);
  return {{&strong.propagator, &weak.propagator}, {1 - more, more}, std::lerp(strong.reynolds, weak.reynolds, more)};
}

}  // namespace stillground::screen
