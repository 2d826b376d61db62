#include "tools/scenarios/plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <variant>

#include "engine/base/calendar.hpp"
#include "engine/field/layout.hpp"
#include "engine/field/plot.hpp"

namespace stillground::scenarios {

namespace {

constexpr std::size_t rows_shown = 40;  ///< in the text; CSV and JSON have all

std::vector<present::Point> corners(const model::Outline& outline) {
  std::vector<present::Point> points;
  for (const auto& corner : outline) points.push_back({corner.x, corner.y});
  return points;
}

/// The depth that most bores have [m].
double common_depth(const std::vector<model::BoreSite>& bores) {
  std::map<double, int> counts;
  for (const auto& bore : bores) ++counts[bore.depth];
  return std::max_element(counts.begin(), counts.end(),
                          [](const auto& a, const auto& b) { return a.second < b.second; })
      ->first;
}

std::string sums_sentence(const PlanSums& sums) {
  std::string text = fmt::format("{} bore{}", sums.bores, sums.bores == 1 ? "" : "s");
  if (sums.bores > 1) text += fmt::format(", {:.2f} m apart at the nearest", sums.nearest);
  text += fmt::format(", {:.0f} m active, {:.0f} m to drill", sums.active_length, sums.drill_length);
  if (sums.land > 0) text += fmt::format(", on {:.0f} m2 of land", sums.land);
  return text;
}

}  // namespace

PlanSums plan_sums(const run::Assembly& assembly) {
  PlanSums sums;
  sums.bores = assembly.bores.size();
  for (const auto& bore : assembly.bores) sums.active_length += bore.depth;
  sums.drill_length = run::drill_length(assembly);
  const auto nearest = field::nearest_distances(assembly.bores);
  if (!nearest.empty()) sums.nearest = *std::min_element(nearest.begin(), nearest.end());
  if (const auto* plot = std::get_if<model::Plot>(&assembly.scenario.layout)) sums.land = field::area(plot->outline);
  return sums;
}

present::Table plan_table(const run::Assembly& assembly) {
  present::Table table;
  table.columns = {{"x", "m"}, {"y", "m"}, {"depth", "m"}, {"top", "m"}};
  const bool phases =
      std::any_of(assembly.bores.begin(), assembly.bores.end(), [](const auto& b) { return b.start > 0; });
  if (phases) table.columns.push_back({"start", "hour", "start", 0});
  for (const auto& bore : assembly.bores) {
    table.rows.push_back({bore.x, bore.y, bore.depth, bore.top});
    if (phases) table.rows.back().emplace_back(bore.start / seconds_per_hour);
  }
  return table;
}

std::string plan_text(const run::Assembly& assembly) {
  present::Table table = plan_table(assembly);
  std::string rest;
  if (table.rows.size() > rows_shown) {
    rest = fmt::format("... and {} more (--csv FILE has all)\n", table.rows.size() - rows_shown);
    table.rows.resize(rows_shown);
  }
  return fmt::format("{}\n{}\n\n{}{}", assembly.scenario.title, sums_sentence(plan_sums(assembly)),
                     present::text(table), rest);
}

present::Json plan_json(const run::Assembly& assembly) {
  const PlanSums sums = plan_sums(assembly);
  present::Json json;
  json["title"] = assembly.scenario.title;
  json["bores"] = sums.bores;
  json["active_length"] = present::quantity(sums.active_length, "m");
  json["length"] = present::quantity(sums.drill_length, "m");
  json["nearest_spacing"] = present::quantity(sums.nearest, "m");
  if (sums.land > 0) json["land"] = present::quantity(sums.land, "m2");
  json["positions"] = present::columns(plan_table(assembly));
  return json;
}

present::SitePlan site_plan(const run::Assembly& assembly) {
  present::SitePlan plan;
  plan.id = "plan";
  plan.title = assembly.scenario.title;
  plan.subtitle = {sums_sentence(plan_sums(assembly))};
  const double depth = common_depth(assembly.bores);
  bool any_hollow = false;
  for (const auto& bore : assembly.bores) {
    const bool hollow = bore.depth != depth || bore.start > 0;
    any_hollow = any_hollow || hollow;
    plan.bores.push_back({{bore.x, bore.y}, hollow, bore.depth != depth ? fmt::format("{:g} m", bore.depth) : ""});
  }
  if (any_hollow) plan.subtitle.push_back("Hollow: of another depth than most, or of a later phase.");
  if (const auto* plot = std::get_if<model::Plot>(&assembly.scenario.layout)) {
    plan.outline = corners(plot->outline);
    for (const auto& part : plot->keep_clear) plan.kept_clear.push_back(corners(part.outline));
  }
  plan.description = "The site from above: " + sums_sentence(plan_sums(assembly));
  return plan;
}

}  // namespace stillground::scenarios
