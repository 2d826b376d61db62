#include "engine/response/operating_fraction.hpp"

#include <algorithm>

#include "engine/loop/flow_rule.hpp"

namespace stillground::response {

double operating_fraction(const assembly::Assembly& assembly) {
  constexpr long apart = 7;  // hours looked at: one after the other every hour of the day
  const double peak = std::max(assembly.loads.peak(), 1e-9);
  double flowing = 0, seen = 0;
  for (long hour = 0; hour < assembly.hours(); hour += apart, ++seen) {
    if (loop::flow_part(assembly.scenario.flow, assembly.loads.hour(hour).size() / peak) > 0) ++flowing;
  }
  return std::max(0.05, flowing / seen);
}

}  // namespace stillground::response
