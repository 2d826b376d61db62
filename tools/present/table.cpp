#include "tools/present/table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>

#include "engine/base/paragraph.hpp"
#include "engine/units/display.hpp"

namespace stillground::present {

namespace {

struct Printed {
  std::string text;
  bool is_text = false;
};

Printed printed(const Cell& cell, const Column& column) {
  if (const auto* word = std::get_if<std::string>(&cell)) return {*word, true};
  if (const auto* count = std::get_if<long>(&cell)) return {fmt::format("{}", *count), false};
  if (const auto* number = std::get_if<double>(&cell)) return {fixed(*number, column.digits), false};
  return {"-", false};
}

std::string padded(const std::string& word, std::size_t columns, bool left) {
  const std::string blanks(columns - std::min(columns, width(word)), ' ');
  return left ? word + blanks : blanks + word;
}

std::string without_trailing_blanks(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

}  // namespace

std::string for_machines(double value, const Column& column) {
  if (!column.on_the_map) return fmt::format("{:.10g}", value);
  std::string s = fixed(value, 6);
  s.erase(s.find_last_not_of('0') + 1);
  return s.ends_with('.') ? s.substr(0, s.size() - 1) : s;
}

Table in_system(Table table, UnitSystem system) {
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    const units::Shown shown = units::shown_in(table.columns[c].units, system);
    if (shown.units == table.columns[c].units) continue;
    table.columns[c].units = shown.units;
    for (auto& row : table.rows) {
      if (auto* number = std::get_if<double>(&row[c])) *number = shown(*number);
    }
  }
  return table;
}

std::string text(const Table& table) {
  const std::size_t n = table.columns.size();
  std::vector<std::vector<std::string>> lines(table.rows.size() + 2, std::vector<std::string>(n));
  std::vector<bool> left(n, false);
  std::vector<std::size_t> widest(n, 0);
  for (std::size_t c = 0; c < n; ++c) {
    const Column& column = table.columns[c];
    lines[0][c] = column.heading.empty() ? column.name : column.heading;
    lines[1][c] = column.units;
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
      const Printed cell = printed(table.rows[r][c], column);
      lines[r + 2][c] = cell.text;
      left[c] = left[c] || (cell.is_text && !column.to_the_right);
    }
    for (const auto& line : lines) widest[c] = std::max(widest[c], width(line[c]));
  }
  const bool has_units = std::any_of(table.columns.begin(), table.columns.end(),
                                     [](const Column& column) { return !column.units.empty(); });
  std::string out;
  for (std::size_t l = 0; l < lines.size(); ++l) {
    if (l == 1 && !has_units) continue;
    std::string line;
    for (std::size_t c = 0; c < n; ++c) line += (c == 0 ? "" : "  ") + padded(lines[l][c], widest[c], left[c]);
    out += without_trailing_blanks(line) + '\n';
  }
  return out;
}

}  // namespace stillground::present
