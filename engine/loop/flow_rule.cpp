#include "engine/loop/flow_rule.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stillground::loop {

double flow_part(const model::Flow& flow, double part) {
  if (part == 0 && flow.runs == model::Flow::Runs::with_load) return 0;
  switch (flow.varies) {
    case model::Flow::Varies::never:
      return 1;
    case model::Flow::Varies::with_load:
      return std::clamp(part, flow.least, 1.0);
    case model::Flow::Varies::in_stages:
      // A load that fills a stage exactly must not start the next one by round-off.
      return std::clamp(std::ceil(part * flow.stages - 1e-9), 1.0, static_cast<double>(flow.stages)) / flow.stages;
  }
  return 1;
}

double least_part(const model::Flow& flow) {
  return flow_part(flow, std::numeric_limits<double>::min());
}

}  // namespace stillground::loop
