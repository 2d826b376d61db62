#include "engine/assembly/work_periods.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "engine/assembly/assembly.hpp"
#include "engine/assembly/phases.hpp"

namespace stillground::assembly {

namespace {

/// Hours at which bores begin or stop, the run's start and end among them.
std::set<long> changes(const Assembly& assembly) {
  std::set<long> hours{0, assembly.hours()};
  for (const model::BoreSite& bore : assembly.bores) {
    for (const double time : {bore.start, bore.stop}) {
      if (time > 0 && time < assembly.duration()) hours.insert(std::lround(time / seconds_per_hour));
    }
  }
  return hours;
}

WorkPeriod period(const Assembly& assembly, const Phases& phases, long first, long end) {
  const double time = static_cast<double>(first) * seconds_per_hour;
  const double concentration = phases.concentration(time);
  WorkPeriod result{.first = first, .end = end, .least_bore = std::numeric_limits<double>::infinity()};
  for (std::size_t g = 0; g < assembly.groups.size(); ++g) {
    if (!phases.works(g, time)) continue;
    const double flow = phases.full_flow(g, concentration) / assembly.fluid.density;
    for (const std::size_t b : assembly.groups.members[g]) result.length += assembly.bores[b].depth;
    const march::Group& group = assembly.problem.groups[g];
    result.bores += static_cast<int>(group.members);
    if (group.returns) result.flow += group.members * flow;
    result.least_bore = std::min(result.least_bore, flow);
    result.most_bore = std::max(result.most_bore, flow);
  }
  if (result.bores == 0) result.least_bore = 0;
  return result;
}

}  // namespace

std::vector<WorkPeriod> work_periods(const Assembly& assembly) {
  const Phases phases(assembly);
  const std::set<long> hours = changes(assembly);
  std::vector<WorkPeriod> periods;
  for (auto first = hours.begin(), end = std::next(first); end != hours.end(); ++first, ++end) {
    periods.push_back(period(assembly, phases, *first, *end));
  }
  return periods;
}

}  // namespace stillground::assembly
