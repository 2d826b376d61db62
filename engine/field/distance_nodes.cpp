#include "engine/field/distance_nodes.hpp"

#include <algorithm>
#include <cmath>

#include "engine/field/layout.hpp"

namespace stillground::field {

namespace {

const double between = std::log(1.1);

}  // namespace

DistanceNodes::DistanceNodes(const std::vector<model::BoreSite>& bores) {
  double least = distance(bores[0], bores[1]), most = least;
  for (std::size_t a = 0; a < bores.size(); ++a) {
    for (std::size_t b = 0; b < a; ++b) {
      const double d = distance(bores[a], bores[b]);
      least = std::min(least, d);
      most = std::max(most, d);
    }
  }
  const auto count = static_cast<std::size_t>(std::ceil(std::log(most / least) / between)) + 2;
  for (std::size_t j = 0; j < count; ++j) nodes_.push_back(least * std::exp(between * static_cast<double>(j)));
}

void DistanceNodes::share(double distance, double weight, std::vector<double>& sums) const {
  const double at = std::log(distance / nodes_.front()) / between;
  const auto j = static_cast<std::size_t>(at);
  sums[j] += weight * (1 - (at - static_cast<double>(j)));
  sums[j + 1] += weight * (at - static_cast<double>(j));
}

}  // namespace stillground::field
