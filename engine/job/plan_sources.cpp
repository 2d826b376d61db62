#include <fmt/format.h>

#include <variant>

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
  const auto* coaxial = std::get_if<model::Coaxial>(&scenario.bore.loop);
  if (coaxial) add("inner pipe", coaxial->inner.name, coaxial->inner.source);
}

}  // namespace stillground::job
