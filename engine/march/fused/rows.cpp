#include "engine/march/fused/rows.hpp"

#include <algorithm>

namespace stillground::march::fused {

namespace {

bool same(const model::Solid& a, const model::Solid& b) {
  return a.conductivity == b.conductivity && a.heat_capacity == b.heat_capacity;
}

}  // namespace

std::vector<unsigned char> uniform_runs(const Problem& problem, std::size_t lanes) {
  const auto& solid = problem.grid.solid;
  std::vector<unsigned char> result(StateLayout(problem).row() / lanes, 0);
  for (std::size_t p = result.size(); p-- > 0;) {
    const std::size_t from = p * lanes, end = std::min(from + lanes, problem.nz());
    bool uniform = from < end;
    for (std::size_t k = from + 1; k < end; ++k) uniform = uniform && same(solid[k], solid[from]);
    if (!uniform) continue;
    const bool goes_on = p + 1 < result.size() && result[p + 1] > 0 && same(solid[from], solid[from + lanes]);
    result[p] = static_cast<unsigned char>(goes_on ? std::min(result[p + 1] + 1, 255) : 1);
  }
  return result;
}

Vector scaled(const Vector& values, double by) {
  Vector result = values;
  for (double& value : result) value *= by;
  return result;
}

}  // namespace stillground::march::fused
