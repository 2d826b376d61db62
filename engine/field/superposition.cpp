#include "engine/field/superposition.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace stillground::field {

std::array<RadialWeight, 4> radial_weights(std::span<const double> r, double distance) {
  if (distance <= r.front()) return {{{0, 1}, {1, 0}, {2, 0}, {3, 0}}};
  const std::size_t last = r.size() - 1;
  if (distance >= r[last]) return {{{last, 1}, {last - 1, 0}, {last - 2, 0}, {last - 3, 0}}};

  const auto above = static_cast<std::size_t>(std::upper_bound(r.begin(), r.end(), distance) - r.begin());
  const std::size_t first = std::clamp<std::size_t>(above, 2, last - 1) - 2;
  std::array<RadialWeight, 4> weights{};
  for (std::size_t i = 0; i < 4; ++i) {
    double weight = 1;
    for (std::size_t j = 0; j < 4; ++j) {
      if (j != i) weight *= std::log(distance / r[first + j]) / std::log(r[first + i] / r[first + j]);
    }
    weights[i] = {first + i, weight};
  }
  return weights;
}

}  // namespace stillground::field
