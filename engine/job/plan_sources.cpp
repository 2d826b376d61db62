#include <fmt/format.h>

#include "engine/bore/loop_type.hpp"
#include "engine/job/plan_parts.hpp"

namespace stillground::job {

std::vector<CatalogueValues> catalogue_values(const model::Scenario& scenario) {
  std::vector<CatalogueValues> values;
  const auto add = [&](const std::string& of, const std::string& entry, const std::string& source) {
    if (!source.empty()) values.push_back({of, entry, source});
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
  return values;
}

}  // namespace stillground::job
