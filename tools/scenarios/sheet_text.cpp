#include <fmt/format.h>

#include <algorithm>

#include "engine/base/paragraph.hpp"
#include "tools/scenarios/sheet.hpp"

namespace stillground::scenarios {

namespace {

constexpr std::size_t columns = 100;
constexpr std::size_t figure_column = 42;

std::string padded(const std::string& text, std::size_t wide, bool right = false) {
  const std::string blanks(wide - std::min(wide, width(text)), ' ');
  return right ? blanks + text : text + blanks;
}

/// Broken into lines below the figures.
std::string hanging(const std::string& text) {
  std::string lines = wrapped(text, columns - figure_column);
  for (std::size_t at = 0; (at = lines.find('\n', at)) != std::string::npos; at += figure_column) {
    lines.insert(++at, figure_column, ' ');
  }
  return lines;
}

std::string line_text(const SheetLine& line) {
  const std::string what = (line.below ? "    " : "  ") + line.what;
  std::string text = padded(what, figure_column) + line.figure + "\n";
  if (!line.rule.empty()) {
    text += std::string(figure_column, ' ') + hanging("[" + line.rule + "]") + "\n";
  }
  return text;
}

std::size_t wide(const SheetGrid& grid, std::size_t c) {
  std::size_t most = std::max(width(grid.columns[c].heading), static_cast<std::size_t>(grid.columns[c].blank));
  for (const auto& row : grid.rows) most = std::max(most, width(row[c]));
  return most;
}

std::string without_blanks_at_end(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line + "\n";
}

std::string grid_text(const SheetGrid& grid) {
  std::string head = "  ";
  for (std::size_t c = 0; c < grid.columns.size(); ++c) {
    head += padded(grid.columns[c].heading, wide(grid, c), grid.columns[c].number) + "  ";
  }
  std::string text = "\n" + without_blanks_at_end(head);
  for (const auto& row : grid.rows) {
    std::string line = "  ";
    for (std::size_t c = 0; c < row.size(); ++c) {
      const std::size_t room = wide(grid, c);
      const std::string cell = row[c].empty() ? std::string(room, '_') : row[c];
      line += padded(cell, room, grid.columns[c].number) + "  ";
    }
    text += without_blanks_at_end(line);
  }
  return text;
}

std::string section_text(const SheetSection& section) {
  std::string text = "\n" + section.heading + "\n" + std::string(width(section.heading), '-') + "\n";
  for (const SheetLine& line : section.lines) text += line_text(line);
  for (const std::string& note : section.notes) text += "  " + wrapped(note, columns - 2, "  ") + "\n";
  for (const SheetGrid& grid : section.grids) text += grid_text(grid);
  return text;
}

}  // namespace

std::string sheet_text(const Sheet& sheet) {
  std::string text = wrapped(sheet.title, columns) + "\n" + wrapped(sheet.sums, columns) + "\n";
  text += "\nCautions\n";
  for (const std::string& caution : sheet.notices.cautions) {
    text += "  " + wrapped(caution, columns - 2, "    ") + "\n";
  }
  text += sheet.notices.warnings.empty() ? "\nNo warnings from the model.\n" : "\nWarnings\n";
  // A warning stays on one line, so that its place can be jumped to.
  for (const std::string& warning : sheet.notices.warnings) text += "  " + warning + "\n";
  for (const SheetSection& section : sheet.sections) text += section_text(section);
  return text + "\n" + sheet.origin + "\n";
}

}  // namespace stillground::scenarios
