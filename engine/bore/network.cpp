#include "engine/bore/network.hpp"

namespace stillground::bore {

Network make_network(const NetworkParts& parts) {
  const double odd_resistance = parts.internal_resistance / 2;
  Network network;
  network.even = {(1 - parts.even_share) * parts.bore_resistance, parts.even_share * parts.bore_resistance,
                  parts.grout_capacity};
  network.odd = {(1 - parts.odd_share) * odd_resistance, parts.odd_share * odd_resistance, parts.grout_capacity / 2};
  network.fluid_capacity = parts.fluid_capacity;
  return network;
}

}  // namespace stillground::bore
