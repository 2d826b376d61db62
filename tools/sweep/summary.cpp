#include "tools/sweep/summary.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "tools/present/csv.hpp"
#include "tools/results/celsius.hpp"
#include "tools/sweep/ranking.hpp"

namespace stillground::sweep {

namespace {

using present::Cell;
using present::Column;

constexpr double joules_per_megawatt_hour = 3.6e9;
constexpr std::size_t rows_shown = 20;

/// What one column holds of a point. `unless_failed`: nothing where it failed.
struct Figure {
  Column column;
  std::function<Cell(std::size_t number, const Record&)> cell;
  bool unless_failed = true;
};

Cell maybe(const std::optional<int>& value) {
  return value ? Cell(static_cast<long>(*value)) : Cell();
}

std::vector<Figure> decided(const Plan& plan) {
  std::vector<Figure> figures = {
      {{"eft_min", "degC", "least EFT", 2}, [](auto, const Record& r) { return results::celsius(r.decision.eft_min); }},
      {{"eft_max", "degC", "greatest EFT", 2},
       [](auto, const Record& r) { return results::celsius(r.decision.eft_max); }},
      {{"margin", "K", "margin", 2}, [](auto, const Record& r) { return r.decision.margin; }},
      {{"first_year_beyond", "", "first year beyond"},
       [](auto, const Record& r) { return maybe(r.decision.first_year_beyond); }},
      {{"hours_beyond", "h", "hours beyond"},
       [](auto, const Record& r) { return r.decision.hours_beyond ? Cell(*r.decision.hours_beyond) : Cell(); }},
      {{"drift", "K/decade", "drift", 3}, [](auto, const Record& r) { return r.decision.drift; }},
      {{"length", "m", "to drill", 0}, [](auto, const Record& r) { return r.decision.length; }},
      {{"power", "MWh", "electricity a year", 1},
       [](auto, const Record& r) { return r.decision.power / joules_per_megawatt_hour; }},
      {{"performance", "", "performance", 2}, [](auto, const Record& r) { return r.decision.performance; }}};
  if (plan.prices) {
    figures.push_back({{"cost", "", "cost", 0}, [&plan](auto, const Record& r) { return *cost_of(plan, r); }});
  }
  figures.push_back({{"method"}, [](auto, const Record& r) { return r.decision.method; }, false});
  figures.push_back(
      {{"warnings"}, [](auto, const Record& r) { return static_cast<long>(r.decision.warnings.size()); }});
  return figures;
}

std::string result_of(const Told& told, std::size_t number) {
  const Standing& standing = told.state[number - 1];
  const Digests& digests = standing.point.digests;
  const Record* shown = standing.shown();
  if (shown == nullptr || !shown->failed.empty()) return "";
  return told.points.folder().kept_result(standing.march ? digests.march : digests.screening);
}

std::vector<Figure> figures_of(const Told& told) {
  std::vector<Figure> figures = decided(told.points.plan());
  std::vector<long> ranks(told.state.size());
  for (std::size_t i = 0; i < told.ranking.size(); ++i) ranks[told.ranking[i] - 1] = static_cast<long>(i + 1);
  figures.insert(figures.end(),
                 {{{"limit", "", "nearest limit"}, [](auto, const Record& r) { return r.decision.limit; }},
                  {{"error_estimate", "K", "own error", 2},
                   [](auto, const Record& r) { return r.decision.method == "march" ? Cell() : Cell(r.error); }},
                  {{"rank"}, [ranks](std::size_t number, auto&) { return ranks[number - 1]; }},
                  {{"point"}, [](std::size_t number, auto&) { return static_cast<long>(number); }, false},
                  {{"result"}, [&told](std::size_t number, auto&) { return result_of(told, number); }},
                  {{"reason"}, [](auto, const Record& r) { return r.failed; }, false}});
  return figures;
}

std::vector<Cell> row_of(const Told& told, const std::vector<Figure>& figures, std::size_t number,
                         const Record& record) {
  std::vector<Cell> row;
  const Plan& plan = told.points.plan();
  const auto choice = told.points.walk().choice(number);
  for (std::size_t axis = 0; axis < choice.size(); ++axis) row.emplace_back(plan.axes[axis].values[choice[axis]].name);
  for (const Figure& figure : figures) {
    const bool nothing = figure.unless_failed && !record.failed.empty();
    row.push_back(nothing ? Cell() : figure.cell(number, record));
  }
  return row;
}

/// What is told of a point: of one that cannot even be read, why.
std::optional<Record> record_told(const Standing& standing) {
  if (const Record* shown = standing.shown()) return *shown;
  if (standing.point.failed.empty()) return std::nullopt;
  Record record;
  record.failed = standing.point.failed;
  return record;
}

}  // namespace

present::Table summary_table(const Told& told) {
  present::Table table;
  for (const Axis& axis : told.points.plan().axes) table.columns.push_back({.name = axis.path, .to_the_right = true});
  const std::vector<Figure> figures = figures_of(told);
  for (const Figure& figure : figures) table.columns.push_back(figure.column);
  for (std::size_t number = 1; number <= told.state.size(); ++number) {
    if (const auto record = record_told(told.state[number - 1])) {
      table.rows.push_back(row_of(told, figures, number, *record));
    }
  }
  return table;
}

std::string summary_csv(const Told& told) {
  present::Table table = summary_table(told);
  for (Column& column : table.columns) column.units.clear();
  return present::csv(table, {});
}

std::string summary_text(const Told& told, UnitSystem system) {
  const Plan& plan = told.points.plan();
  const present::Table whole = summary_table(told);
  std::vector<std::size_t> columns;
  const auto add = [&](const std::string& name) {
    for (std::size_t i = 0; i < whole.columns.size(); ++i) {
      if (whole.columns[i].name == name) columns.push_back(i);
    }
  };
  for (const char* name : {"rank", "point"}) add(name);
  for (std::size_t i = 0; i < plan.axes.size(); ++i) columns.push_back(i);
  for (const char* name :
       {"eft_min", "eft_max", "margin", "first_year_beyond", "drift", "length", "power", "cost", "method"})
    add(name);
  present::Table best;
  for (const std::size_t column : columns) best.columns.push_back(whole.columns[column]);
  std::vector<std::pair<long, const std::vector<Cell>*>> rows;
  for (const auto& row : whole.rows) {
    const Cell& rank = row[columns.front()];
    if (const long* at = std::get_if<long>(&rank)) rows.emplace_back(*at, &row);
  }
  std::sort(rows.begin(), rows.end());
  for (std::size_t i = 0; i < std::min(rows.size(), rows_shown); ++i) {
    std::vector<Cell>& row = best.rows.emplace_back();
    for (const std::size_t column : columns) row.push_back((*rows[i].second)[column]);
  }
  std::string out = fmt::format("{}\nRanked by {}\n\n{}", counts_text(told), text_of(plan.rank),
                                present::text(present::in_system(best, system)));
  if (rows.size() > rows_shown) out += fmt::format("... and {} more (summary.csv has all)\n", rows.size() - rows_shown);
  return out;
}

present::Json summary_json(const Told& told) {
  const Plan& plan = told.points.plan();
  present::Json json;
  json["verb"] = "sweep";
  json["plan"] = plan.file.string();
  json["folder"] = told.points.folder().path().string();
  json["points"] = told.points.walk().count();
  json["method"] = text_of(plan.method, plan.best);
  json["ranked_by"] = text_of(plan.rank);
  json["unbeaten"] = unbeaten(plan, told.state);
  json["summary"] = present::columns(summary_table(told));
  return json;
}

}  // namespace stillground::sweep
