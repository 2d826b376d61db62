#include "tools/scenarios/plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/field/layout.hpp"
#include "engine/field/plot.hpp"
#include "engine/job/cautions.hpp"
#include "engine/job/header.hpp"
#include "engine/job/warnings.hpp"
#include "tools/scenarios/plan_words.hpp"

namespace stillground::scenarios {

namespace {

constexpr std::size_t rows_shown = 40;  ///< in the text; CSV and JSON have all

}  // namespace

PlanSums plan_sums(const assembly::Assembly& assembly) {
  PlanSums sums;
  sums.bores = assembly.bores.size();
  for (const auto& bore : assembly.bores) sums.active_length += bore.depth;
  sums.drill_length = assembly::drill_length(assembly);
  const auto nearest = field::nearest_distances(assembly.bores);
  if (!nearest.empty()) sums.nearest = *std::min_element(nearest.begin(), nearest.end());
  if (const auto* land = model::land_of(assembly.scenario.layout)) sums.land = field::area(land->outline);
  return sums;
}

present::Table plan_table(const assembly::Assembly& assembly) {
  const auto any = [&](auto has) { return std::any_of(assembly.bores.begin(), assembly.bores.end(), has); };
  const bool named = any([](const model::BoreSite& bore) { return !bore.name.empty(); });
  const bool later = any([](const model::BoreSite& bore) { return bore.start > 0; });
  const bool shut_off = any([](const model::BoreSite& bore) { return std::isfinite(bore.stop); });
  const bool weighted = any([](const model::BoreSite& bore) { return bore.flow_weight != 1; });
  const auto date = [&](double seconds) { return present::Cell(date_of(assembly.scenario.run, seconds)); };
  present::Table table;
  table.columns.push_back({"number"});
  if (named) table.columns.push_back({"name"});
  for (const char* axis : {"x", "y"}) table.columns.push_back({.name = axis, .units = "m", .on_the_map = true});
  table.columns.insert(table.columns.end(), {{"depth", "m"}, {"top", "m"}});
  if (later) table.columns.push_back({"start", "", "works from"});
  if (shut_off) table.columns.push_back({"stop", "", "shut off from"});
  if (weighted) table.columns.push_back({"flow_weight", "", "flow weight"});
  for (const auto& bore : assembly.bores) {
    auto& row = table.rows.emplace_back();
    row.emplace_back(static_cast<long>(table.rows.size()));
    if (named) row.emplace_back(bore.name);
    row.insert(row.end(), {bore.x, bore.y, bore.depth, bore.top});
    // An empty cell is read as "from the start" and "never", in a scenario of another start too.
    if (later) row.push_back(bore.start > 0 ? date(bore.start) : present::Cell());
    if (shut_off) row.push_back(std::isfinite(bore.stop) ? date(bore.stop) : present::Cell());
    if (weighted) row.emplace_back(bore.flow_weight);
  }
  return table;
}

std::string plan_text(const assembly::Assembly& assembly, UnitSystem system) {
  present::Table table = present::in_system(plan_table(assembly), system);
  std::string rest;
  if (table.rows.size() > rows_shown) {
    rest = fmt::format("... and {} more (--csv FILE has all)\n", table.rows.size() - rows_shown);
    table.rows.resize(rows_shown);
  }
  return fmt::format("{}\n{}\n\n{}{}", assembly.scenario.title, sums_sentence(plan_sums(assembly), system),
                     present::text(table), rest);
}

present::Json plan_json(const assembly::Assembly& assembly) {
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

std::vector<std::string> plan_comments(const assembly::Assembly& assembly) {
  std::vector<std::string> comments{assembly.scenario.title};
  if (model::land_of(assembly.scenario.layout) != nullptr) {
    comments.emplace_back(
        "To read these bores with their land: field.positions names this file, field.plot beside it "
        "keeps outline, setback and keep_clear.");
  }
  return comments;
}

program::Notices plan_notices(const assembly::Assembly& assembly) {
  return {job::stored_lines(job::warnings_before(assembly)), job::cautions(assembly.scenario)};
}

}  // namespace stillground::scenarios
