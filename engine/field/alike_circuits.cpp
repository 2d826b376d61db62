#include "engine/field/alike_circuits.hpp"

#include <algorithm>
#include <numeric>

#include "engine/field/distance_nodes.hpp"
#include "engine/field/layout.hpp"

namespace stillground::field {

namespace {

/// The summed effect of all other bores on each.
std::vector<double> effects(const std::vector<model::BoreSite>& bores, const std::function<double(double)>& effect) {
  const DistanceNodes nodes(bores);
  std::vector<double> at_nodes;
  for (const double node : nodes.nodes()) at_nodes.push_back(effect(node));
  std::vector<double> sums, felt;
  for (std::size_t a = 0; a < bores.size(); ++a) {
    sums.assign(at_nodes.size(), 0.0);
    for (std::size_t b = 0; b < bores.size(); ++b) {
      if (b != a) nodes.share(distance(bores[a], bores[b]), 1, sums);
    }
    felt.push_back(std::inner_product(sums.begin(), sums.end(), at_nodes.begin(), 0.0));
  }
  return felt;
}

}  // namespace

Groups alike_circuits(const std::vector<model::BoreSite>& bores, std::size_t in_series, std::size_t most,
                      const std::function<double(double)>& effect) {
  if (bores.size() < 2) return lone_groups(bores.size());
  const std::vector<double> felt = effects(bores, effect);
  const std::size_t circuits = bores.size() / in_series;
  std::vector<std::size_t> make(circuits);  // the first circuit of its make
  std::vector<double> sum(circuits);
  for (std::size_t c = 0; c < circuits; ++c) {
    const auto first = felt.begin() + static_cast<std::ptrdiff_t>(c * in_series);
    sum[c] = std::accumulate(first, first + static_cast<std::ptrdiff_t>(in_series), 0.0);
    const auto alike = [&](std::size_t other) {
      for (std::size_t i = 0; i < in_series; ++i) {
        if (!same_make(bores[c * in_series + i], bores[other * in_series + i])) return false;
      }
      return true;
    };
    for (make[c] = 0; make[c] < c && (make[make[c]] != make[c] || !alike(make[c]));) ++make[c];
  }
  std::vector<std::size_t> ranked(circuits);
  std::iota(ranked.begin(), ranked.end(), std::size_t{0});
  std::stable_sort(ranked.begin(), ranked.end(), [&](std::size_t a, std::size_t b) {
    return make[a] != make[b] ? make[a] < make[b] : sum[a] < sum[b];
  });
  const std::size_t each = (circuits + most - 1) / most;
  std::vector<std::size_t> group(bores.size());
  std::size_t number = 0, begun = 0;
  for (std::size_t i = 0; i < circuits; ++i) {
    const bool fresh = i > 0 && (make[ranked[i]] != make[ranked[i - 1]] || i - begun == each);
    if (fresh) ++number, begun = i;
    for (std::size_t place = 0; place < in_series; ++place)
      group[ranked[i] * in_series + place] = number * in_series + place;
  }
  return numbered(group);
}

}  // namespace stillground::field
