#include <fmt/format.h>

#include "engine/base/quote.hpp"
#include "engine/config/parts.hpp"

namespace stillground::config {
namespace {

bool has_duty(const model::HourlySeries& series) {
  return !series.values.empty();
}

std::vector<model::CopPoint> read_curve(const Section& section, std::string_view leaf) {
  const Node& node = section.node(leaf);
  const Key& row = section.row(leaf);
  const std::string path = section.where(leaf).key;
  if (node.entries.empty()) section.where(leaf).refuse(fmt::format("no point is given (for example {})", row.example));
  std::vector<model::CopPoint> points;
  for (const Entry& entry : node.entries) {
    const Where at_key{entry.place, path}, at_value{entry.value.place, fmt::format("{}.{}", path, entry.key)};
    model::CopPoint point;
    point.eft = units::to_si(entry.key, units::Dimension::temperature, at_key);
    check_range(point.eft, entry.key, key("limits.*.value"), at_key);
    if (!points.empty() && point.eft - points.back().eft < 1e-6) {
      at_key.refuse(fmt::format("{} does not lie above the point before it: temperatures must rise", quote(entry.key)));
    }
    if (entry.value.kind != Node::Kind::scalar) at_value.refuse("a single number is expected (for example 3.4)");
    point.cop = plain_number(entry.value.text, at_value, "3.4");
    const double least = row.least == "1" ? 1 : 0;
    if (point.cop <= least) {
      at_value.refuse(
          fmt::format("{} is out of range (allowed: above {} to {})", quote(entry.value.text), row.least, row.most));
    }
    check_range(point.cop, entry.value.text, row, at_value);
    points.push_back(point);
  }
  return points;
}

}  // namespace

std::optional<model::HeatPump> read_heat_pump(const Section& root, const model::Loads& loads, Context& context) {
  const auto section = root.optional_section("heat_pump");
  model::HeatPump pump;
  if (section && section->has("heating_cop")) pump.heating_cop = read_curve(*section, "heating_cop");
  if (section && section->has("cooling_cop")) pump.cooling_cop = read_curve(*section, "cooling_cop");
  pump.hot_water_cop =
      section && section->has("hot_water_cop") ? read_curve(*section, "hot_water_cop") : pump.heating_cop;
  const auto* building = std::get_if<model::BuildingLoads>(&loads);
  const bool heats = building && has_duty(building->heating);
  const bool warms = building && has_duty(building->hot_water);
  const bool cools = building && has_duty(building->cooling);
  if (!heats && !warms && !cools) {
    if (section) context.warn(section->where().place, "heat_pump is not used: no load goes through a heat pump");
    return std::nullopt;
  }
  for (const auto& [needed, curve, leaf, duty] : {std::tuple{heats, &pump.heating_cop, "heating_cop", "heating"},
                                                  std::tuple{warms, &pump.hot_water_cop, "hot_water_cop", "hot water"},
                                                  std::tuple{cools, &pump.cooling_cop, "cooling_cop", "cooling"}}) {
    if (!needed) curve->clear();
    if (!needed || !curve->empty()) continue;
    const Where where = section ? section->where(leaf) : root.where("heat_pump");
    where.refuse(fmt::format("missing: the loads have {} (for example \"heat_pump: {{{}: {}}}\")", duty, leaf,
                             key(fmt::format("heat_pump.{}", leaf)).example));
  }
  return pump;
}

}  // namespace stillground::config
