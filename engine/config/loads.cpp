#include <fmt/format.h>

#include <cmath>

#include "engine/base/quote.hpp"
#include "engine/config/hourly.hpp"
#include "engine/config/parts.hpp"

namespace stillground::config {
namespace {

model::Loads read_building(const Section& section, const Csv& csv, const HourlyRows& rows) {
  model::BuildingLoads loads;
  for (const auto& [leaf, series] : {std::pair{"heating", &loads.heating}, std::pair{"cooling", &loads.cooling}}) {
    if (section.has(leaf)) *series = hourly_series(csv, rows, section.text(leaf), section.where(leaf), 0);
  }
  if (section.has("heating") && section.has("cooling") && section.text("heating") == section.text("cooling")) {
    section.where("cooling").refuse(fmt::format("{} is the column of heating already", quote(section.text("cooling"))));
  }
  loads.cooling_direct = section.word("cooling_by") == "fluid";
  if (section.has("cooling_by") && !section.has("cooling")) {
    section.where("cooling_by").refuse("there is no cooling: leave it out or give cooling");
  }
  return loads;
}

model::Loads read_from_file(const Section& section, Context& context) {
  if (section.has("to_ground")) {
    for (const char* leaf : {"heating", "cooling", "cooling_by"}) section.forbid(leaf, "cannot stand beside to_ground");
  } else if (!section.has("heating") && !section.has("cooling")) {
    section.where().refuse(
        "no column is named: heating, cooling or to_ground is needed (for example \"heating: heating_kw\")");
  }
  const Csv csv = read_input(section, "file", context);
  const auto first_row = section.has("first_row") ? std::optional(section.date("first_row")) : std::nullopt;
  const HourlyRows rows = hourly_rows(csv, first_row, section.where(first_row ? "first_row" : "file"));
  if (rows.leap_days > 0) {
    context.warn(
        {csv.file, 0, 0},
        fmt::format("29 February is left out ({} in {} years)", rows.leap_days, rows.kept.size() / hours_per_year),
        "every year of a run has 365 days");
  }
  if (!section.has("to_ground")) return read_building(section, csv, rows);
  return model::GroundLoads{hourly_series(csv, rows, section.text("to_ground"), section.where("to_ground"), -HUGE_VAL)};
}

bool has_duty(const model::HourlySeries& series) {
  return !series.values.empty();
}

}  // namespace

model::Loads read_loads(const Section& root, Context& context) {
  const Section section = root.section("loads");
  if (section.has("file")) return read_from_file(section, context);
  for (const char* leaf : {"heating", "cooling", "cooling_by", "first_row"}) {
    section.forbid(leaf, "needs a file of hourly values (for example \"file: loads.csv\")");
  }
  if (!section.has("to_ground")) {
    section.where("file").refuse(
        "missing (for example \"file: loads.csv\", or \"to_ground: 13.5 kW\" for a constant load)");
  }
  return model::ConstantGroundLoad{section.quantity("to_ground")};
}

namespace {

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
  const auto* building = std::get_if<model::BuildingLoads>(&loads);
  const bool heats = building && has_duty(building->heating);
  const bool cools = building && has_duty(building->cooling) && !building->cooling_direct;
  if (!heats && !cools) {
    if (section) context.warn(section->where().place, "heat_pump is not used: no load goes through a heat pump");
    return std::nullopt;
  }
  for (const auto& [needed, curve, leaf, duty] : {std::tuple{heats, &pump.heating_cop, "heating_cop", "heating"},
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
