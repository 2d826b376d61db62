#include <fmt/format.h>

#include <utility>

#include "engine/config/parts.hpp"

namespace stillground::config {
namespace {

model::Antifreeze antifreeze(const std::string& word) {
  for (const model::NamedAntifreeze& row : model::antifreezes) {
    if (row.word == word) return row.base;
  }
  return model::Antifreeze::none;
}

}  // namespace

model::Fluid read_fluid(const Section& root) {
  const Section section = root.section("fluid");
  model::Fluid fluid;
  fluid.base = antifreeze(section.word("base"));
  if (fluid.base == model::Antifreeze::none) {
    for (const char* leaf : {"mass_fraction", "volume_fraction"})
      section.forbid(leaf, "water has no antifreeze: leave it out");
    return fluid;
  }
  const std::string given = section.one_of({"mass_fraction", "volume_fraction"});
  fluid.basis = given == "mass_fraction" ? model::Fluid::Basis::mass : model::Fluid::Basis::volume;
  fluid.fraction = section.quantity(given);
  if (fluid.fraction == 0) section.where(given).refuse("an antifreeze of no amount: write \"base: water\"");
  return fluid;
}

namespace {

model::Flow::Varies read_varies(const Section& section) {
  const std::string word = section.word("varies");
  for (const auto& [leaf, owner] : {std::pair{"least", "with load"}, std::pair{"stages", "in stages"}}) {
    if (word != owner) section.forbid(leaf, fmt::format("belongs to \"varies: {}\"; here it is {}", owner, word));
  }
  if (word == "with load") return model::Flow::Varies::with_load;
  return word == "in stages" ? model::Flow::Varies::in_stages : model::Flow::Varies::never;
}

}  // namespace

model::Flow read_flow(const Section& root) {
  const Section section = root.section("flow");
  model::Flow flow;
  const std::string given = section.one_of({"per_bore", "total"});
  flow.amount = given == "per_bore" ? model::Flow::Amount::per_bore : model::Flow::Amount::total;
  flow.rate = section.quantity(given);
  flow.runs = section.word("runs") == "always" ? model::Flow::Runs::always : model::Flow::Runs::with_load;
  flow.varies = read_varies(section);
  flow.least = section.quantity("least");
  if (flow.varies == model::Flow::Varies::in_stages) flow.stages = section.whole("stages");
  flow.in_series = section.whole("in_series");
  flow.reynolds_min = section.number("reynolds_min");
  return flow;
}

}  // namespace stillground::config
