#include "engine/assembly/median_bore.hpp"

#include <algorithm>
#include <cstddef>

namespace stillground::assembly {

const model::BoreSite& median_bore(const std::vector<model::BoreSite>& bores) {
  std::vector<const model::BoreSite*> sorted;
  for (const model::BoreSite& bore : bores) sorted.push_back(&bore);
  const auto middle = sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 2);
  std::nth_element(sorted.begin(), middle, sorted.end(), [](const auto* a, const auto* b) {
    return a->depth != b->depth ? a->depth < b->depth : a->top < b->top;
  });
  return **middle;
}

}  // namespace stillground::assembly
