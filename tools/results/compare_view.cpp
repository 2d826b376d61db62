#include "tools/results/compare_view.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>

#include "engine/base/paragraph.hpp"
#include "engine/units/display.hpp"
#include "tools/results/compare_facts.hpp"
#include "tools/results/limit_view.hpp"
#include "tools/results/method_note.hpp"

namespace stillground::results {

namespace {

using present::Cell;
using present::Column;
using present::Json;
using present::Table;

constexpr std::size_t side_by_side = 4;  ///< layouts that fit on a terminal

std::string shown(const Cell& cell, const Column& column, const units::Shown& unit) {
  if (const auto* word = std::get_if<std::string>(&cell)) return *word;
  if (const auto* count = std::get_if<long>(&cell)) return fmt::format("{}", *count);
  const auto* number = std::get_if<double>(&cell);
  return number != nullptr ? present::fixed(unit(*number), column.digits) : "-";
}

/// People read a share in percent.
units::Shown people_read(const std::string& unit, UnitSystem system) {
  return unit == "1" ? units::Shown{"%", 100, 0} : units::shown_in(unit, system);
}

std::string shown(const Fact& one, std::size_t layout, const units::Shown& unit) {
  const std::string from = shown(one.cells[layout], one.column, unit);
  if (one.to.empty()) return from;
  const std::string to = shown(one.to[layout], one.column, unit);
  return to == from ? from : from + " to " + to;
}

/// A fact is a column, a range two.
template <class Take>
void take_each(const std::vector<Fact>& facts, Take take) {
  for (const Fact& one : facts) {
    take(one.column, one.cells);
    if (!one.to.empty()) take(one.upper, one.to);
  }
}

/// The layouts [first, last) as columns.
Table columns_of(const std::vector<Layout>& layouts, const std::vector<Fact>& facts, std::size_t first,
                 std::size_t last, UnitSystem system) {
  Table table{{{"what", ""}, {"units", "", " "}}, {}};
  for (std::size_t i = first; i < last; ++i) table.columns.push_back({layouts[i].name, "", "", 2, true});
  for (const Fact& one : facts) {
    const units::Shown unit = people_read(one.column.units, system);
    std::vector<Cell> row = {one.column.heading, std::string(unit.units)};
    for (std::size_t i = first; i < last; ++i) row.emplace_back(shown(one, i, unit));
    table.rows.push_back(row);
  }
  return table;
}

}  // namespace

Table compare_table(const std::vector<Layout>& layouts) {
  Table table{{{"layout", ""}, {"file", ""}, {"title", ""}}, {}};
  for (const Layout& layout : layouts) table.rows.push_back({layout.name, layout.file, layout.title});
  take_each(facts_of(layouts), [&](const Column& column, const std::vector<Cell>& cells) {
    table.columns.push_back(column);
    for (std::size_t i = 0; i < layouts.size(); ++i) table.rows[i].push_back(cells[i]);
  });
  return table;
}

Table compare_columns(const std::vector<Layout>& layouts, UnitSystem system) {
  return columns_of(layouts, facts_of(layouts), 0, layouts.size(), system);
}

std::string compare_text(const std::vector<Layout>& layouts, UnitSystem system) {
  std::string out;
  for (const Layout& layout : layouts) {
    out += fmt::format("{}: {} ({})\n", layout.name, layout.title, layout.file);
    if (const std::string note = method_note(layout.method); !note.empty()) out += "  " + note + "\n";
  }
  const std::vector<Fact> facts = facts_of(layouts);
  for (std::size_t first = 0; first < layouts.size(); first += side_by_side) {
    out +=
        "\n" + present::text(columns_of(layouts, facts, first, std::min(first + side_by_side, layouts.size()), system));
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
    take_each(facts, [&](const Column& column, const std::vector<Cell>& cells) {
      one[column.name] = present::single(cells[i], column.units);
    });
    one["limits"] = limit_json(layout.limits, layout.start);
    one["warnings"] = layout.notices.warnings;
    one["verdict"] = layout.drift ? Json(verdict(*layout.drift)) : Json(nullptr);
    list.push_back(one);
  }
  return {{"verb", "compare"}, {"layouts", list}};
}

}  // namespace stillground::results
