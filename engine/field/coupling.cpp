#include "engine/field/coupling.hpp"

#include <map>
#include <utility>

#include "engine/field/layout.hpp"
#include "engine/field/superposition.hpp"

namespace stillground::field {

Coupling::Coupling(const std::vector<model::BoreSite>& bores, const Groups& groups, std::span<const double> r)
    : terms_(groups.size()) {
  for (std::size_t a = 0; a < groups.size(); ++a) {
    const std::size_t here = groups.members[a].front();
    std::map<std::pair<std::size_t, std::size_t>, double> sum;
    for (std::size_t other = 0; other < bores.size(); ++other) {
      if (other == here) continue;
      for (const RadialWeight& w : radial_weights(r, distance(bores[here], bores[other]))) {
        sum[{groups.of_bore[other], w.cell}] += w.weight;
      }
    }
    for (const auto& [key, weight] : sum) {
      if (weight != 0) terms_[a].push_back({key.first, key.second, weight});
    }
  }
}

}  // namespace stillground::field
