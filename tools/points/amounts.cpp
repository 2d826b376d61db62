#include "tools/points/amounts.hpp"

#include <algorithm>
#include <limits>
#include <vector>

#include "engine/bore/loop_type.hpp"
#include "engine/field/layout.hpp"

namespace stillground::points {

namespace {

/// Length of the least spanning tree of the bores on the plan [m].
double spanning_length(const std::vector<model::BoreSite>& bores) {
  std::vector<double> nearest(bores.size(), std::numeric_limits<double>::infinity());  // to the tree; -1: in it
  double length = 0;
  std::size_t last = 0;
  for (std::size_t joined = 1; joined < bores.size(); ++joined) {
    nearest[last] = -1;
    std::size_t next = last;
    for (std::size_t i = 0; i < bores.size(); ++i) {
      if (nearest[i] < 0) continue;
      nearest[i] = std::min(nearest[i], field::distance(bores[last], bores[i]));
      if (nearest[next] < 0 || nearest[i] < nearest[next]) next = i;
    }
    length += nearest[next];
    last = next;
  }
  return length;
}

}  // namespace

Amounts amounts_of(const model::Scenario& scenario) {
  const auto bores = field::sites(scenario.layout, scenario.bore.top, scenario.bore.depth);
  double active = 0;
  for (const model::BoreSite& bore : bores) active += bore.depth;
  const bore::Amounts per_metre = bore::loop_type(scenario.bore.loop).amounts(scenario.bore);
  return {static_cast<double>(bores.size()), per_metre.grout * active, per_metre.pipe * active, spanning_length(bores)};
}

}  // namespace stillground::points
