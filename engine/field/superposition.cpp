#include "engine/field/superposition.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace stillground::field {

namespace {

/// Lagrange's cubic in the logarithm, plus `bend` times its (third + 3 x second) derivative. `from`: logarithm of the
/// place over each of the four nodes from `first` on.
std::array<RadialWeight, 4> cubic(std::size_t first, const std::array<double, 4>& from, double bend) {
  std::array<RadialWeight, 4> weights{};
  for (std::size_t i = 0; i < 4; ++i) {
    // The cubic of node i is product/divisor: its derivatives are 2 sum/divisor and 6/divisor.
    double product = 1, sum = 0, divisor = 1;
    for (std::size_t j = 0; j < 4; ++j) {
      if (j == i) continue;
      product *= from[j];
      sum += from[j];
      divisor *= from[j] - from[i];
    }
    weights[i] = {first + i, (product + bend * (6 + 3 * 2 * sum)) / divisor};
  }
  return weights;
}

constexpr std::array<RadialWeight, 4> held_at_first() {
  return {{{0, 1}, {1, 0}, {2, 0}, {3, 0}}};
}

constexpr std::array<RadialWeight, 4> held_at_last(std::size_t last) {
  return {{{last, 1}, {last - 1, 0}, {last - 2, 0}, {last - 3, 0}}};
}

/// The first of the four nodes about a place between nodes `above` - 1 and `above`.
std::size_t first_of_four(std::size_t above, std::size_t last) {
  return std::clamp<std::size_t>(above, 2, last - 1) - 2;
}

}  // namespace

std::array<RadialWeight, 4> logarithmic_weights(std::span<const double> nodes, double at) {
  const std::size_t last = nodes.size() - 1;
  if (at <= nodes.front()) return held_at_first();
  if (at >= nodes[last]) return held_at_last(last);
  const auto above = static_cast<std::size_t>(std::upper_bound(nodes.begin(), nodes.end(), at) - nodes.begin());
  const std::size_t first = first_of_four(above, last);
  std::array<double, 4> from{};
  for (std::size_t j = 0; j < 4; ++j) from[j] = std::log(at / nodes[first + j]);
  return cubic(first, from, 0);
}

RadialReader::RadialReader(std::span<const double> r)
    : first_(r.front()), last_(r.size() - 1), width_(std::log(r.back() / r.front()) / static_cast<double>(last_)) {}

std::array<RadialWeight, 4> RadialReader::weights(double distance) const {
  const double x = std::log(distance / first_) / width_;
  if (!(x > 0)) return held_at_first();
  if (x >= static_cast<double>(last_)) return held_at_last(last_);
  const std::size_t first = first_of_four(static_cast<std::size_t>(x) + 1, last_);
  std::array<double, 4> from{};
  for (std::size_t j = 0; j < 4; ++j) from[j] = (x - static_cast<double>(first + j)) * width_;
  return cubic(first, from, width_ * width_ / 72);
}

std::array<RadialWeight, 4> radial_weights(std::span<const double> r, double distance) {
  return RadialReader(r).weights(distance);
}

}  // namespace stillground::field
