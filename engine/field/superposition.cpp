#include "engine/field/superposition.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace stillground::field {

namespace {

/// Lagrange's cubic in the logarithm, plus `bend` times its (third + 3 x second) derivative; ends held.
std::array<RadialWeight, 4> weights_at(std::span<const double> nodes, double at, double bend) {
  if (at <= nodes.front()) return {{{0, 1}, {1, 0}, {2, 0}, {3, 0}}};
  const std::size_t last = nodes.size() - 1;
  if (at >= nodes[last]) return {{{last, 1}, {last - 1, 0}, {last - 2, 0}, {last - 3, 0}}};

  const auto above = static_cast<std::size_t>(std::upper_bound(nodes.begin(), nodes.end(), at) - nodes.begin());
  const std::size_t first = std::clamp<std::size_t>(above, 2, last - 1) - 2;
  std::array<RadialWeight, 4> weights{};
  for (std::size_t i = 0; i < 4; ++i) {
    // The cubic of node i is product/divisor: its derivatives are 2 sum/divisor and 6/divisor.
    double product = 1, sum = 0, divisor = 1;
    for (std::size_t j = 0; j < 4; ++j) {
      if (j == i) continue;
      const double from = std::log(at / nodes[first + j]);
      product *= from;
      sum += from;
      divisor *= std::log(nodes[first + i] / nodes[first + j]);
    }
    weights[i] = {first + i, (product + bend * (6 + 3 * 2 * sum)) / divisor};
  }
  return weights;
}

}  // namespace

std::array<RadialWeight, 4> logarithmic_weights(std::span<const double> nodes, double at) {
  return weights_at(nodes, at, 0);
}

std::array<RadialWeight, 4> radial_weights(std::span<const double> r, double distance) {
  const double width = std::log(r.back() / r.front()) / static_cast<double>(r.size() - 1);
  return weights_at(r, distance, width * width / 72);
}

}  // namespace stillground::field
