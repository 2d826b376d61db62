#include "engine/bore/mode.hpp"

#include <algorithm>

namespace stillground::bore {

namespace {

/// How the ground answers an odd mode, see odd_mode.
struct GroundNode {
  double place = 0;   ///< over the wall's share
  double amount = 0;  ///< bore cross-sections of ground in it
};

GroundNode ground_node(OddShape shape) {
  return shape == OddShape::halves ? GroundNode{0.75, 1.62} : GroundNode{2.0 / 3, 0.46};
}

/// Nodes at `inner` and `outer` of the mode's temperature drop, counted from its end.
Mode chain(double resistance, double inner, double outer, double inner_capacity, double outer_capacity) {
  return {.inner = (1 - inner) * resistance,
          .middle = (inner - outer) * resistance,
          .outer = outer * resistance,
          .inner_capacity = inner_capacity,
          .outer_capacity = outer_capacity};
}

}  // namespace

Mode of_streams(Mode mode, const PerStream& reads, const PerStream& gives) {
  mode.reads = reads;
  mode.gives = gives;
  return mode;
}

Mode steady_mode(double resistance) {
  return chain(resistance, 2.0 / 3, 1.0 / 3, 0, 0);
}

Mode even_mode(const EvenModeParts& parts) {
  const double mean = parts.mean;
  // Not quite zero: nodes at one temperature have no resistance between them.
  const double spread = std::clamp(parts.spread, 1e-3 * mean, 0.9 * std::min(mean, 1 - mean));
  return chain(parts.resistance, mean + spread, mean - spread, parts.capacity / 2, parts.capacity / 2);
}

Mode odd_mode(const OddModeParts& parts) {
  const GroundNode node = ground_node(parts.shape);
  const double wanted = node.place * parts.wall_share;
  const double place = std::clamp(wanted, 0.1 * parts.share, 0.9 * parts.share);
  const double amount = node.amount * parts.ground_capacity * (wanted / place) * (wanted / place);
  return chain(parts.resistance, parts.share, place, parts.capacity, std::max(amount, 1e-6 * parts.capacity));
}

}  // namespace stillground::bore
