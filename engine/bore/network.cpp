#include "engine/bore/network.hpp"

#include <algorithm>

namespace stillground::bore {

namespace {

/// How the ground answers an odd mode, see make_network.
struct GroundNode {
  double place = 0;   ///< over the wall's share
  double amount = 0;  ///< bore cross-sections of ground in it
};

GroundNode ground_node(OddShape shape) {
  return shape == OddShape::halves ? GroundNode{0.75, 1.62} : GroundNode{2.0 / 3, 0.46};
}

/// Nodes at `inner` and `outer` of the mode's temperature drop, counted from its end.
Mode chain(double resistance, double inner, double outer, double inner_capacity, double outer_capacity) {
  return {{},
          {},
          (1 - inner) * resistance,
          (inner - outer) * resistance,
          outer * resistance,
          inner_capacity,
          outer_capacity};
}

Mode even_chain(double resistance, double mean, double wanted_spread, double capacity) {
  // Not quite zero: nodes at one temperature have no resistance between them.
  const double spread = std::clamp(wanted_spread, 1e-3 * mean, 0.9 * std::min(mean, 1 - mean));
  return chain(resistance, mean + spread, mean - spread, capacity / 2, capacity / 2);
}

/// `ground`: capacity of ground in the bore's place [J/(m K)].
Mode odd_chain(double resistance, double share, double wall_share, double capacity, double ground, OddShape shape) {
  const GroundNode node = ground_node(shape);
  const double wanted = node.place * wall_share;
  const double place = std::clamp(wanted, 0.1 * share, 0.9 * share);
  const double amount = node.amount * ground * (wanted / place) * (wanted / place);
  return chain(resistance, share, place, capacity, std::max(amount, 1e-6 * capacity));
}

Mode of_streams(Mode mode, const PerStream& reads, const PerStream& gives) {
  mode.reads = reads;
  mode.gives = gives;
  return mode;
}

}  // namespace

Network make_network(const NetworkParts& parts) {
  Network network;
  network.passes = 1;
  network.modes[0] =
      of_streams(even_chain(parts.bore_resistance, parts.even_share, parts.even_spread, parts.grout_capacity),
                 {0.5, 0.5}, {0.5, 0.5});
  network.modes[1] = of_streams(odd_chain(parts.internal_resistance / 2, parts.odd_share, parts.odd_wall_share,
                                          parts.odd_part * parts.grout_capacity, parts.ground_capacity, parts.shape),
                                {0.5, -0.5}, {1, -1});
  network.capacity = {parts.fluid_capacity, parts.fluid_capacity};
  return network;
}

Network make_network(const SeriesParts& parts) {
  // Round the square the legs are down 1, up 1, down 2, up 2; crossed: down 1, down 2, up 1, up 2. Streams are numbered
  // down 1, down 2, up 1, up 2.
  const std::array<std::size_t, 4> round =
      parts.crossed ? std::array<std::size_t, 4>{0, 1, 2, 3} : std::array<std::size_t, 4>{0, 2, 1, 3};
  const auto laid = [&](const std::array<double, 4>& legs) {
    PerStream streams{};
    for (std::size_t corner = 0; corner < 4; ++corner) streams.at(round.at(corner)) = legs.at(corner);
    return streams;
  };
  const Mode alternate = odd_chain(parts.alternate_resistance, parts.alternate_share, parts.alternate_wall_share,
                                   parts.grout_capacity / 4, parts.ground_capacity, OddShape::quarters);
  const Mode opposite = odd_chain(parts.opposite_resistance, parts.opposite_share, parts.opposite_wall_share,
                                  parts.grout_capacity / 2, parts.ground_capacity, OddShape::halves);
  Network network;
  network.passes = 2;
  network.modes[0] =
      of_streams(even_chain(parts.bore_resistance, parts.even_share, parts.even_spread, parts.grout_capacity),
                 laid({0.25, 0.25, 0.25, 0.25}), laid({0.25, 0.25, 0.25, 0.25}));
  network.modes[1] = of_streams(alternate, laid({0.25, -0.25, 0.25, -0.25}), laid({1, -1, 1, -1}));
  network.modes[2] = of_streams(opposite, laid({0.5, 0, -0.5, 0}), laid({1, 0, -1, 0}));
  network.modes[3] = of_streams(opposite, laid({0, 0.5, 0, -0.5}), laid({0, 1, 0, -1}));
  network.capacity.fill(parts.fluid_capacity);
  return network;
}

Network make_network(const ConcentricParts& parts) {
  const std::size_t annulus = parts.down_annulus ? 0 : 1;
  const std::size_t inner = 1 - annulus;
  PerStream of_annulus{}, difference{};
  of_annulus.at(annulus) = 1;
  difference.at(inner) = 1;
  difference.at(annulus) = -1;
  Network network;
  network.passes = 1;
  network.modes[0] = of_streams(even_chain(parts.wall_resistance, parts.share, parts.spread, parts.grout_capacity),
                                of_annulus, of_annulus);
  network.modes[1] = of_streams(chain(parts.internal_resistance, 2.0 / 3, 1.0 / 3, 0, 0), difference, difference);
  network.capacity.at(annulus) = parts.annulus_capacity;
  network.capacity.at(inner) = parts.inner_capacity;
  return network;
}

}  // namespace stillground::bore
