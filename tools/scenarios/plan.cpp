#include "tools/scenarios/plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <variant>

#include "engine/base/calendar.hpp"
#include "engine/field/circuits.hpp"
#include "engine/field/layout.hpp"
#include "engine/field/plot.hpp"
#include "engine/run/cautions.hpp"
#include "engine/run/header.hpp"
#include "engine/run/warnings.hpp"
#include "engine/units/display.hpp"

namespace stillground::scenarios {

namespace {

constexpr std::size_t rows_shown = 40;  ///< in the text; CSV and JSON have all

std::vector<present::Point> corners(const model::Outline& outline) {
  std::vector<present::Point> points;
  for (const auto& corner : outline) points.push_back({corner.x, corner.y});
  return points;
}

/// The depth that most bores have, the greatest of equals [m].
double common_depth(const std::vector<model::BoreSite>& bores) {
  std::map<double, int> counts;
  for (const auto& bore : bores) ++counts[bore.depth];
  const auto fewer = [](const auto& a, const auto& b) { return a.second < b.second; };
  return std::max_element(counts.rbegin(), counts.rend(), fewer)->first;
}

/// The name, and a depth that is not most bores'.
std::string label_of(const model::BoreSite& bore, bool own_depth) {
  if (!own_depth) return bore.name;
  const std::string depth = fmt::format("{:g} m", std::round(10 * bore.depth) / 10);
  return bore.name.empty() ? depth : bore.name + ", " + depth;
}

/// The different instants after the start at which bores begin (or are shut off): the only one, or the first and the
/// last.
std::string dates(const run::Assembly& assembly, double model::BoreSite::*instant) {
  std::set<double> instants;
  for (const auto& bore : assembly.bores) {
    if (bore.*instant > 0 && std::isfinite(bore.*instant)) instants.insert(bore.*instant);
  }
  if (instants.empty()) return "";
  const auto date = [&](double seconds) {
    const std::string text = iso_hour(assembly.scenario.run.start, seconds / seconds_per_hour);
    return text.ends_with(" 00:00") ? text.substr(0, text.find(' ')) : text;
  };
  const std::string first = date(*instants.begin());
  return instants.size() == 1 ? first : fmt::format("{} to {}", first, date(*instants.rbegin()));
}

/// What a layout tells of the site besides its bores.
void add_land(const model::Layout& layout, present::SitePlan& plan) {
  if (std::holds_alternative<model::Fan>(layout)) plan.chamber = present::Point{0, 0};
  const auto* plot = std::get_if<model::Plot>(&layout);
  if (!plot) return;
  plan.plot = present::PlanArea{corners(plot->outline), plot->setback};
  for (const auto& part : plot->keep_clear) plan.kept_clear.push_back({corners(part.outline), part.setback});
}

std::string sums_sentence(const PlanSums& sums, UnitSystem system) {
  const auto say = [system](double kept, const char* kind, int digits) {
    return units::text(kept, kind, digits, system);
  };
  std::string text = fmt::format("{} bore{}", sums.bores, sums.bores == 1 ? "" : "s");
  if (sums.bores > 1) text += fmt::format(", {} apart at the nearest", say(sums.nearest, "m", 2));
  text += fmt::format(", {} active, {} to drill", say(sums.active_length, "m", 0), say(sums.drill_length, "m", 0));
  if (sums.land > 0) text += fmt::format(", on {} of land", say(sums.land, "m2", 0));
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
  const auto any = [&](auto has) { return std::any_of(assembly.bores.begin(), assembly.bores.end(), has); };
  const bool named = any([](const model::BoreSite& bore) { return !bore.name.empty(); });
  const bool later = any([](const model::BoreSite& bore) { return bore.start > 0; });
  const bool shut_off = any([](const model::BoreSite& bore) { return std::isfinite(bore.stop); });
  const bool weighted = any([](const model::BoreSite& bore) { return bore.flow_weight != 1; });
  present::Table table;
  if (named) table.columns.push_back({"name"});
  table.columns.insert(table.columns.end(), {{"x", "m"}, {"y", "m"}, {"depth", "m"}, {"top", "m"}});
  if (later) table.columns.push_back({"start", "hour", "start", 0});
  if (shut_off) table.columns.push_back({"stop", "hour", "stop", 0});
  if (weighted) table.columns.push_back({"flow_weight", "", "flow weight"});
  for (const auto& bore : assembly.bores) {
    auto& row = table.rows.emplace_back();
    if (named) row.emplace_back(bore.name);
    row.insert(row.end(), {bore.x, bore.y, bore.depth, bore.top});
    if (later) row.emplace_back(bore.start / seconds_per_hour);
    if (shut_off) row.emplace_back(bore.stop / seconds_per_hour);  // never: infinite, an empty cell
    if (weighted) row.emplace_back(bore.flow_weight);
  }
  return table;
}

std::string plan_text(const run::Assembly& assembly, UnitSystem system) {
  present::Table table = present::in_system(plan_table(assembly), system);
  std::string rest;
  if (table.rows.size() > rows_shown) {
    rest = fmt::format("... and {} more (--csv FILE has all)\n", table.rows.size() - rows_shown);
    table.rows.resize(rows_shown);
  }
  return fmt::format("{}\n{}\n\n{}{}", assembly.scenario.title, sums_sentence(plan_sums(assembly), system),
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

present::SitePlan site_plan(const run::Assembly& assembly, const outputs::Drawing& drawing) {
  const model::Scenario& scenario = assembly.scenario;
  present::SitePlan plan;
  plan.id = "plan";
  plan.footnotes = drawing.footnotes;
  plan.title = scenario.title;
  plan.subtitle = {sums_sentence(plan_sums(assembly), drawing.units)};
  plan.description = "The site from above: " + sums_sentence(plan_sums(assembly), drawing.units);
  const double depth = common_depth(assembly.bores);
  bool deeper_or_shallower = false;
  for (const auto& bore : assembly.bores) {
    const bool own_depth = bore.depth != depth;
    deeper_or_shallower = deeper_or_shallower || own_depth;
    plan.bores.push_back({{bore.x, bore.y}, bore.start > 0, std::isfinite(bore.stop), label_of(bore, own_depth)});
  }
  if (deeper_or_shallower) {
    plan.subtitle.push_back(fmt::format("Active length {:g} m, or as written beside the bore.", depth));
  }
  plan.later_text = "works from " + dates(assembly, &model::BoreSite::start);
  plan.shut_off_text = "shut off from " + dates(assembly, &model::BoreSite::stop);
  const field::Upstream upstream = field::in_series(assembly.bores.size(), scenario.flow.in_series);
  for (std::size_t i = 0; i < upstream.size(); ++i) {
    if (upstream[i] != field::no_bore) plan.links.push_back({plan.bores[upstream[i]].at, plan.bores[i].at});
  }
  add_land(scenario.layout, plan);
  return plan;
}

program::Notices plan_notices(const run::Assembly& assembly) {
  return {run::stored_lines(run::warnings_before(assembly)), run::cautions(assembly.scenario)};
}

}  // namespace stillground::scenarios
