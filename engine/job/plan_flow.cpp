#include <algorithm>
#include <limits>

#include "engine/job/plan_parts.hpp"
#include "engine/loop/flow_rule.hpp"

namespace stillground::job {

void describe_bore_flow(const assembly::Assembly& assembly, Plan& plan) {
  plan.periods = assembly::work_periods(assembly);
  double most = 0, least = std::numeric_limits<double>::infinity();
  for (const assembly::WorkPeriod& period : plan.periods) {
    if (period.bores == 0) continue;
    most = std::max(most, period.most_bore);
    least = std::min(least, period.least_bore);
  }
  least *= loop::least_part(assembly.scenario.flow);
  const auto flow = [&](double volume) {
    const double mass_flow = volume * assembly.fluid.density;
    return BoreFlow{volume, assembly::pipe_flow(assembly.scenario, mass_flow, assembly.fluid.reference).velocity};
  };
  plan.full_flow = flow(most);
  plan.least_flow = flow(least);
}

}  // namespace stillground::job
