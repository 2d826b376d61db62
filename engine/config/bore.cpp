#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <string>
#include <vector>

#include "engine/bore/loop_type.hpp"
#include "engine/config/catalogue.hpp"
#include "engine/config/parts.hpp"

namespace stillground::config {
namespace {

model::Pipe read_pipe(const Section& bore, std::string_view leaf, Context& context) {
  const Section own = bore.section(leaf);
  const auto [pipe, source] = with_catalogue(own, "pipes", context);
  model::Pipe result;
  result.source = source;
  if (own.has("use")) result.name = own.text("use");
  result.outer_diameter = pipe.quantity("outer_diameter");
  result.wall = pipe.quantity("wall");
  result.conductivity = pipe.quantity("conductivity");
  result.heat_capacity = pipe.quantity("heat_capacity");
  result.roughness = pipe.quantity("roughness");
  // A bore narrower than this carries no flow worth a loop.
  if (result.inner_diameter() < 0.2 * result.outer_diameter) {
    pipe.where("wall").refuse(fmt::format("{:.4g} mm is too thick for a pipe of {:.4g} mm (allowed: up to {:.4g} mm)",
                                          1e3 * result.wall, 1e3 * result.outer_diameter, 400 * result.outer_diameter));
  }
  if (result.roughness > 0.05 * result.inner_diameter()) {
    pipe.where("roughness")
        .refuse(fmt::format("{:.4g} mm is too rough for an inner diameter of {:.4g} mm (allowed: 5 %)",
                            1e3 * result.roughness, 1e3 * result.inner_diameter()));
  }
  return result;
}

model::Grout read_grout(const Section& bore, Context& context) {
  const Section own = bore.section("grout");
  const auto [grout, source] = with_catalogue(own, "grouts", context);
  model::Grout result;
  if (!own.has("conductivity") || !own.has("heat_capacity")) result.source = source;
  if (own.has("use")) result.name = own.text("use");
  result.solid = {grout.quantity("conductivity"), grout.quantity("heat_capacity")};
  return result;
}

std::optional<model::MeasuredResistance> read_resistance(const Section& bore) {
  if (!bore.has("resistance")) return std::nullopt;
  if (bore.node("resistance").kind == Node::Kind::map) {
    const Section test = bore.section("resistance");
    return model::MeasuredResistance{test.quantity("effective"), test.optional_quantity("at_flow"),
                                     test.optional_quantity("over")};
  }
  return model::MeasuredResistance{bore.quantity("resistance"), {}, {}};
}

bool owns(const bore::LoopType& type, std::string_view path) {
  const auto own = type.own_keys();
  return std::any_of(own.begin(), own.end(), [&](const Key& key) { return key.path == path; });
}

/// Refuses keys of other loop types.
void forbid_foreign(const Section& bore, const bore::NamedLoopType& given) {
  for (const Key* key : keys_below("bore")) {
    std::vector<std::string> owners;
    for (const bore::NamedLoopType& row : bore::loop_types()) {
      if (owns(row.type, key->path)) owners.push_back(fmt::format("\"loop: {}\"", row.word));
    }
    if (owners.empty() || owns(given.type, key->path)) continue;
    bore.forbid(key->leaf(), fmt::format("belongs to {}; here it is {}", fmt::join(owners, " or "), given.word));
  }
}

/// Of `bore` diameter and pipe are known.
model::Loop read_loop(const Section& section, const model::Bore& bore, Context& context) {
  const std::string word = section.word("loop");
  const auto types = bore::loop_types();
  const auto given = std::find_if(types.begin(), types.end(), [&](const auto& row) { return row.word == word; });
  forbid_foreign(section, *given);
  const auto pipe = [&](std::string_view leaf) { return read_pipe(section, leaf, context); };
  return given->type.read({section, pipe}, bore);
}

}  // namespace

model::Bore read_bore(const Section& root, Context& context) {
  const Section bore = root.section("bore");
  model::Bore result;
  result.top = bore.quantity("top");
  result.depth = bore.quantity("depth");
  result.diameter = bore.quantity("diameter");
  result.pipe = read_pipe(bore, "pipe", context);
  result.loop = read_loop(bore, result, context);
  result.grout = read_grout(bore, context);
  result.resistance = read_resistance(bore);
  result.drilled_from_trench = bore.word("drilled_from") == "trench";
  return result;
}

}  // namespace stillground::config
