#include <fmt/format.h>

#include "engine/bore/loop_type.hpp"
#include "engine/job/plan_parts.hpp"

namespace stillground::job {

void describe_sources(const model::Scenario& scenario, Plan& plan) {
  const auto add = [&](const std::string& of, const std::string& entry, const std::string& source) {
    if (!source.empty()) plan.sources.push_back({of, entry, source});
  };
  for (std::size_t i = 0; i < scenario.ground.layers.size(); ++i) {
    const model::Layer& layer = scenario.ground.layers[i];
    add(fmt::format("ground layer {}", i + 1), layer.material, layer.source);
  }
  add("grout", scenario.bore.grout.name, scenario.bore.grout.source);
  add("pipe", scenario.bore.pipe.name, scenario.bore.pipe.source);
  for (const bore::OwnPipe& own : bore::loop_type(scenario.bore.loop).own_pipes(scenario.bore.loop)) {
    add(own.name, own.pipe.name, own.pipe.source);
  }
}

}  // namespace stillground::job
