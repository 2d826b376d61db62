#include "engine/config/csv.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <charconv>
#include <cmath>
#include <utility>

#include "engine/base/digest.hpp"
#include "engine/base/files.hpp"
#include "engine/base/quote.hpp"
#include "engine/base/spelling.hpp"
#include "engine/config/text_validation.hpp"

namespace stillground::config {
namespace {

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t' || text.back() == '\r')) text.remove_suffix(1);
  return text;
}

/// Characters, not bytes, before `at`, from 1.
int column_of(std::string_view line, std::size_t at) {
  int column = 1;
  for (const char c : line.substr(0, at)) column += (static_cast<unsigned char>(c) & 0xc0) != 0x80 ? 1 : 0;
  return column;
}

/// Takes the next cell off the front of `rest`; `whole` is the line it belongs to.
std::string_view take_cell(std::string_view& rest, std::string_view whole, const std::string& file, int line) {
  while (!rest.empty() && (rest.front() == ' ' || rest.front() == '\t')) rest.remove_prefix(1);
  if (!rest.starts_with('"')) {
    const std::size_t comma = std::min(rest.find(','), rest.size());
    const std::string_view cell = trimmed(rest.substr(0, comma));
    rest.remove_prefix(comma);
    return cell;
  }
  const Where where{{file, line, column_of(whole, whole.size() - rest.size())}, ""};
  const std::size_t close = rest.find('"', 1);
  if (close == rest.npos) where.refuse("a quotation mark is not closed on its line");
  const std::string_view cell = trimmed(rest.substr(1, close - 1));
  rest.remove_prefix(close + 1);
  while (!rest.empty() && (rest.front() == ' ' || rest.front() == '\t')) rest.remove_prefix(1);
  if (!rest.empty() && rest.front() != ',') where.refuse("a comma is expected after the closing quotation mark");
  return cell;
}

std::size_t split(std::string_view content, const std::string& file, int line, std::vector<std::string_view>& cells) {
  std::string_view rest = content;
  std::size_t count = 0;
  for (;;) {
    cells.push_back(take_cell(rest, content, file, line));
    ++count;
    if (rest.empty()) return count;
    rest.remove_prefix(1);
  }
}

CsvColumn column_head(std::string_view cell, const Place& place) {
  const Where where{place, ""};
  const std::size_t open = cell.find('[');
  CsvColumn column{std::string(trimmed(cell.substr(0, open))), "", place};
  if (open != cell.npos) {
    if (!cell.ends_with(']')) where.refuse(quote(cell) + " is not a column's head: name [unit]");
    column.unit = trimmed(cell.substr(open + 1, cell.size() - open - 2));
  }
  return column;
}

bool looks_like_number(std::string_view cell) {
  double value = 0;
  const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
  return error == std::errc{} && end == cell.data() + cell.size();
}

std::vector<CsvColumn> read_heads(std::string_view content, const std::string& file, int line) {
  const Where where{{file, line, 1}, ""};
  if (content.find(',') == content.npos) {
    for (const auto& [sign, name] : {std::pair{';', "semicolons"}, std::pair{'\t', "tabs"}}) {
      if (trimmed(content).find(sign) != content.npos) {
        where.refuse(fmt::format("columns are parted by {}; use commas, and a point for decimals", name));
      }
    }
  }
  std::vector<std::string_view> cells;
  split(content, file, line, cells);
  std::vector<CsvColumn> columns;
  for (const std::string_view cell : cells) {
    const auto at = static_cast<std::size_t>(cell.data() - content.data());
    const Place place{file, line, cell.empty() ? 0 : column_of(content, at)};
    if (looks_like_number(cell)) where.refuse("the first line must name the columns, for example \"heating_kw [kW]\"");
    CsvColumn column = column_head(cell, place);
    for (const CsvColumn& other : columns) {
      if (!column.name.empty() && other.name == column.name) {
        Where{place, ""}.refuse(fmt::format("repeated column {}", quote(column.name)));
      }
    }
    columns.push_back(std::move(column));
  }
  return columns;
}

/// Calls `row(content, line)` for each line that is neither comment nor blank; blank lines may only end the file.
template <class Row>
void for_each_line(std::string_view text, const std::string& file, Row&& row) {
  int blank = 0;
  for (int line = 1; !text.empty(); ++line) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view content = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    const std::string_view bare = trimmed(content);
    if (bare.starts_with('#')) continue;
    if (bare.empty()) {
      blank = blank == 0 ? line : blank;
      continue;
    }
    if (row(content.ends_with('\r') ? content.substr(0, content.size() - 1) : content, line) && blank != 0) {
      Where{{file, blank, 0}, ""}.refuse("a blank line among the rows");
    }
    blank = 0;
  }
}

}  // namespace

std::optional<std::size_t> Csv::find(std::string_view name) const {
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (columns[i].name == name) return i;
  }
  return std::nullopt;
}

std::size_t Csv::need(std::string_view name, const Where& asked) const {
  if (const auto found = find(name)) return *found;
  std::vector<std::string> names;
  for (const CsvColumn& column : columns) names.push_back(column.name);
  const auto near = nearest_word(std::string(name), names);
  asked.refuse(fmt::format("{} has no column {} ({}it has {})", file, quote(name),
                           near ? fmt::format("did you mean \"{}\"?; ", *near) : "", fmt::join(names, ", ")));
}

Where Csv::where(std::size_t row, std::size_t column) const {
  const std::string_view found = cell(row, column);
  const auto at = static_cast<std::size_t>(found.data() - text->data());
  const std::size_t before = at == 0 ? std::string::npos : text->rfind('\n', at - 1);
  const std::size_t first = before == std::string::npos ? 0 : before + 1;
  return {{file, lines[row], column_of(std::string_view(*text).substr(first), at - first)}, columns[column].name};
}

units::Conversion Csv::conversion(std::size_t column, units::Dimension dimension) const {
  const CsvColumn& head = columns[column];
  const Where where{head.place, head.name};
  if (head.unit.empty() && dimension != units::Dimension::fraction) {
    where.refuse(fmt::format("the column has no unit (write \"{} [unit]\", a unit as in {})", head.name,
                             units::facts(dimension).examples));
  }
  return units::conversion(head.unit, dimension, where);
}

double Csv::number(std::size_t row, std::size_t column, const units::Conversion& to_si) const {
  std::string_view digits = cell(row, column);
  if (digits.empty()) where(row, column).refuse("a value is missing");
  if (digits.starts_with('+')) digits.remove_prefix(1);
  double value = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (error == std::errc::invalid_argument || end != digits.data() + digits.size()) {
    where(row, column).refuse(quote(cell(row, column)) + " is not a number");
  }
  const double si = to_si(value);
  if (error != std::errc{} || !std::isfinite(si)) {
    where(row, column).refuse(quote(cell(row, column)) + " is not a finite number");
  }
  return si;
}

Csv read_csv(const std::filesystem::path& file, const Where& asked) {
  Csv csv;
  csv.file = file.string();
  csv.text = std::make_unique<const std::string>(read_file(file, asked));
  csv.sha256 = sha256(*csv.text);
  check_plain_text(*csv.text, csv.file);
  for_each_line(without_mark(*csv.text), csv.file, [&](std::string_view content, int line) {
    if (csv.columns.empty()) {
      csv.columns = read_heads(content, csv.file, line);
      return false;
    }
    const std::size_t count = split(content, csv.file, line, csv.cells);
    if (count != csv.columns.size()) {
      Where{{csv.file, line, 0}, ""}.refuse(
          fmt::format("the row has {} cells, the first line names {} columns", count, csv.columns.size()));
    }
    csv.lines.push_back(line);
    return true;
  });
  if (csv.columns.empty()) Where{{csv.file, 1, 0}, ""}.refuse("the file is empty: no line names columns");
  if (csv.lines.empty()) Where{{csv.file, 0, 0}, ""}.refuse("the file has no rows below its first line");
  return csv;
}

}  // namespace stillground::config
