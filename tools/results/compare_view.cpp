#include "tools/results/compare_view.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <limits>

#include "engine/base/paragraph.hpp"
#include "engine/units/display.hpp"
#include "tools/results/celsius.hpp"
#include "tools/results/limit_view.hpp"
#include "tools/results/method_note.hpp"
#include "tools/results/months.hpp"

namespace stillground::results {

namespace {

using present::Cell;
using present::Column;
using present::Json;
using present::Table;

constexpr std::size_t side_by_side = 4;  ///< layouts that fit on a terminal

/// One figure of a layout, as every form shows it.
struct Fact {
  Column column;
  std::vector<Cell> cells;  ///< one a layout
};

template <class Get>
Fact fact(const std::vector<Layout>& layouts, const Column& column, Get get) {
  Fact one{column, {}};
  for (const Layout& layout : layouts) one.cells.push_back(get(layout));
  return one;
}

Cell eft_of(const Layout& layout, int run_year, double Spread::*which) {
  if (run_year > layout.years) return {};
  return celsius(layout.fluid[static_cast<std::size_t>(run_year - 1)].eft.*which);
}

Cell drift_figure_of(const Layout& layout, double Drift::*which) {
  return layout.drift ? Cell((*layout.drift).*which) : Cell();
}

Cell over_run(const Layout& layout, double Spread::*which, bool least) {
  double found = std::numeric_limits<double>::quiet_NaN();
  for (const YearFluid& year : layout.fluid) {
    const double value = celsius(year.eft.*which);
    if (!(least ? value >= found : value <= found)) found = value;  // also takes the first, found being NaN
  }
  return found;
}

/// The first run-year in which any limit was left.
Cell first_year_beyond(const Layout& layout) {
  std::optional<std::size_t> first;
  for (const LimitOutcome& outcome : layout.limits) {
    if (outcome.first_beyond) first = std::min(first.value_or(*outcome.first_beyond), *outcome.first_beyond);
  }
  return first ? Cell(static_cast<long>(run_year_of(*first))) : Cell();
}

std::string limit_cell(const Layout& layout, const std::string& name) {
  for (const LimitOutcome& outcome : layout.limits) {
    if (outcome.limit.name == name) return first_beyond_text(outcome, layout.start);
  }
  return "no limit";
}

/// The names of all layouts' limits, in their order.
std::vector<std::string> limit_names(const std::vector<Layout>& layouts) {
  std::vector<std::string> names;
  for (const Layout& layout : layouts) {
    for (const LimitOutcome& outcome : layout.limits) {
      if (std::find(names.begin(), names.end(), outcome.limit.name) == names.end()) names.push_back(outcome.limit.name);
    }
  }
  return names;
}

void add_extremes(std::vector<Fact>& facts, const std::vector<Layout>& layouts) {
  int longest = 0;
  for (const Layout& layout : layouts) longest = std::max(longest, layout.years);
  const auto add = [&](const std::string& end, const std::string& when, auto year_of) {
    facts.push_back(fact(layouts, {"eft_min_" + end, "degC", "least EFT, " + when, 2},
                         [&](const Layout& l) { return eft_of(l, year_of(l), &Spread::least); }));
    facts.push_back(fact(layouts, {"eft_max_" + end, "degC", "greatest EFT, " + when, 2},
                         [&](const Layout& l) { return eft_of(l, year_of(l), &Spread::most); }));
  };
  add("first_year", "year 1", [](const Layout&) { return 1; });
  if (longest >= 10) add("tenth_year", "year 10", [](const Layout&) { return 10; });
  if (longest > 1) add("last_year", "last year", [](const Layout& l) { return l.years; });
}

std::vector<Fact> facts_of(const std::vector<Layout>& layouts) {
  std::vector<Fact> facts;
  const auto add = [&](const Column& column, auto get) { facts.push_back(fact(layouts, column, get)); };
  add({"years", "year", "run-years"}, [](const Layout& l) { return Cell(static_cast<long>(l.years)); });
  add({"bores", "", "bores"}, [](const Layout& l) { return Cell(l.bores); });
  add({"length", "m", "to drill", 0}, [](const Layout& l) { return Cell(l.drill_length); });
  add({"spacing", "m", "nearest two bores", 2}, [](const Layout& l) { return Cell(l.spacing); });
  add({"land_area", "m2", "land", 0}, [](const Layout& l) { return Cell(l.land_area); });
  add({"eft_min", "degC", "least EFT, all years", 2},
      [](const Layout& l) { return over_run(l, &Spread::least, true); });
  add({"eft_max", "degC", "greatest EFT, all years", 2},
      [](const Layout& l) { return over_run(l, &Spread::most, false); });
  add_extremes(facts, layouts);
  add({"drift", "K/decade", "ground block's trend", 3},
      [](const Layout& l) { return drift_figure_of(l, &Drift::trend); });
  add({"share_reached", "1", "of its final change", 2},
      [](const Layout& l) { return drift_figure_of(l, &Drift::share); });
  add({"first_year_beyond", "", "first year beyond a limit"}, first_year_beyond);
  for (const std::string& name : limit_names(layouts)) {
    add({name + "_first_beyond", "", name}, [&](const Layout& l) { return Cell(limit_cell(l, name)); });
  }
  add({"method", "", "method"}, [](const Layout& l) { return Cell(l.method); });
  return facts;
}

std::string shown(const Cell& cell, const Column& column, const units::Shown& unit) {
  if (const auto* word = std::get_if<std::string>(&cell)) return *word;
  if (const auto* count = std::get_if<long>(&cell)) return fmt::format("{}", *count);
  const auto* number = std::get_if<double>(&cell);
  return number != nullptr ? present::fixed(unit(*number), column.digits) : "-";
}

/// The layouts [first, last) as columns.
std::string columns_text(const std::vector<Layout>& layouts, const std::vector<Fact>& facts, std::size_t first,
                         std::size_t last, UnitSystem system) {
  Table table{{{"what", ""}, {"units", "", " "}}, {}};
  for (std::size_t i = first; i < last; ++i) table.columns.push_back({layouts[i].name, "", "", 2, true});
  for (const Fact& one : facts) {
    const units::Shown unit = units::shown_in(one.column.units, system);
    std::vector<Cell> row = {one.column.heading, std::string(unit.units)};
    for (std::size_t i = first; i < last; ++i) row.emplace_back(shown(one.cells[i], one.column, unit));
    table.rows.push_back(row);
  }
  return present::text(table);
}

}  // namespace

Table compare_table(const std::vector<Layout>& layouts) {
  Table table{{{"layout", ""}, {"file", ""}}, {}};
  for (const Layout& layout : layouts) table.rows.push_back({layout.name, layout.file});
  for (const Fact& one : facts_of(layouts)) {
    table.columns.push_back(one.column);
    for (std::size_t i = 0; i < layouts.size(); ++i) table.rows[i].push_back(one.cells[i]);
  }
  return table;
}

std::string compare_text(const std::vector<Layout>& layouts, UnitSystem system) {
  std::string out;
  for (const Layout& layout : layouts) {
    out += fmt::format("{}: {} ({})\n", layout.name, layout.title, layout.file);
    if (const std::string note = method_note(layout.method); !note.empty()) out += "  " + note + "\n";
  }
  const std::vector<Fact> facts = facts_of(layouts);
  for (std::size_t first = 0; first < layouts.size(); first += side_by_side) {
    out += "\n" + columns_text(layouts, facts, first, std::min(first + side_by_side, layouts.size()), system);
  }
  out += "\nEFT: hourly means of the hours with flow; they hide the peaks inside an hour.\n";
  for (const Layout& layout : layouts) {
    out += layout.drift
               ? fmt::format("\n{}\n", wrapped(layout.name + ": " + verdict(*layout.drift, system), 100))
               : fmt::format("\n{}: no ground temperatures recorded, its drift cannot be told.\n", layout.name);
  }
  return out;
}

Json compare_json(const std::vector<Layout>& layouts) {
  const std::vector<Fact> facts = facts_of(layouts);
  Json list = Json::array();
  for (std::size_t i = 0; i < layouts.size(); ++i) {
    const Layout& layout = layouts[i];
    Json one = {{"layout", layout.name}, {"file", layout.file}, {"title", layout.title}, {"start", iso(layout.start)}};
    for (const Fact& each : facts) one[each.column.name] = present::single(each.cells[i], each.column.units);
    one["limits"] = limit_json(layout.limits, layout.start);
    one["warnings"] = layout.notices.warnings;
    one["verdict"] = layout.drift ? Json(verdict(*layout.drift)) : Json(nullptr);
    list.push_back(one);
  }
  return {{"verb", "compare"}, {"layouts", list}};
}

}  // namespace stillground::results
