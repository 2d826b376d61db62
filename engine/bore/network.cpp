#include "engine/bore/network.hpp"

#include <algorithm>

namespace stillground::bore {

namespace {

constexpr double ground_place = 0.75;   // of the ground's odd node, over the wall's share
constexpr double ground_amount = 1.62;  // bore cross-sections of ground in it

/// Nodes at `inner` and `outer` of the mode's temperature drop, counted from its end.
Mode mode(double resistance, double inner, double outer, double inner_capacity, double outer_capacity) {
  return {(1 - inner) * resistance, (inner - outer) * resistance, outer * resistance, inner_capacity, outer_capacity};
}

Mode even_mode(const NetworkParts& parts) {
  const double mean = parts.even_share;
  // Not quite zero: nodes at one temperature have no resistance between them.
  const double spread = std::clamp(parts.even_spread, 1e-3 * mean, 0.9 * std::min(mean, 1 - mean));
  return mode(parts.bore_resistance, mean + spread, mean - spread, parts.grout_capacity / 2, parts.grout_capacity / 2);
}

Mode odd_mode(const NetworkParts& parts) {
  const double half = parts.grout_capacity / 2;
  const double wanted = ground_place * parts.odd_wall_share;
  const double place = std::clamp(wanted, 0.1 * parts.odd_share, 0.9 * parts.odd_share);
  const double ground = ground_amount * parts.ground_capacity * (wanted / place) * (wanted / place);
  return mode(parts.internal_resistance / 2, parts.odd_share, place, half, std::max(ground, 1e-6 * half));
}

}  // namespace

Network make_network(const NetworkParts& parts) {
  return {even_mode(parts), odd_mode(parts), parts.fluid_capacity};
}

}  // namespace stillground::bore
