#include "engine/config/placeholders.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/config/keys.hpp"
#include "engine/units/quantity.hpp"

namespace stillground::config {

namespace {

const Key& row(std::string_view path) {
  return *std::find_if(keys().begin(), keys().end(), [&](const Key& key) { return key.path == path; });
}

}  // namespace

std::vector<Placeholder> placeholders(const model::Scenario& scenario) {
  std::vector<Placeholder> found;
  const std::string_view title = row("title").example;
  if (scenario.title == title) {
    found.push_back({{scenario.place("title"), "title"},
                     fmt::format("\"{}\" is the title that `stillground new` writes: name the site", title)});
  }
  const auto* constant = std::get_if<model::ConstantGroundLoad>(&scenario.loads);
  const Key& load = row("loads.to_ground");
  for (const std::string_view example : {load.example, load.example2}) {
    const Where where{scenario.place("loads.to_ground"), "loads.to_ground"};
    if (constant && constant->to_ground == units::to_si(example, units::Dimension::power, where)) {
      found.push_back({where, fmt::format("{} is the load of the scenario that `stillground new` writes: is it this "
                                          "site's?",
                                          example)});
    }
  }
  return found;
}

void refuse_placeholders(const model::Scenario& scenario) {
  for (const Placeholder& one : placeholders(scenario)) one.where.refuse(one.text);
}

}  // namespace stillground::config
