#include "engine/bore/network.hpp"

namespace stillground::bore {

Network make_network(const NetworkParts& parts) {
  const Mode even = even_mode({.resistance = parts.bore_resistance,
                               .mean = parts.even_share,
                               .spread = parts.even_spread,
                               .capacity = parts.grout_capacity});
  const Mode odd = odd_mode({.resistance = parts.internal_resistance / 2,
                             .share = parts.odd_share,
                             .wall_share = parts.odd_wall_share,
                             .capacity = parts.odd_part * parts.grout_capacity,
                             .ground_capacity = parts.ground_capacity,
                             .shape = parts.shape});
  Network network;
  network.passes = 1;
  network.modes[0] = of_streams(even, {0.5, 0.5}, {0.5, 0.5});
  network.modes[1] = of_streams(odd, {0.5, -0.5}, {1, -1});
  network.capacity = {parts.fluid_capacity, parts.fluid_capacity};
  return network;
}

}  // namespace stillground::bore
