#include "tools/present/csv.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace stillground::present {

namespace {

std::string quoted(const std::string& word) {
  if (word.find_first_of(",\"\r\n") == std::string::npos) return word;
  std::string out = "\"";
  for (const char c : word) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + '"';
}

std::string printed(const Cell& cell, const Column& column) {
  if (const auto* word = std::get_if<std::string>(&cell)) return quoted(*word);
  if (const auto* count = std::get_if<long>(&cell)) return fmt::format("{}", *count);
  const auto* number = std::get_if<double>(&cell);
  return number != nullptr && std::isfinite(*number) ? for_machines(*number, column) : std::string();
}

}  // namespace

std::string csv(const Table& table, const std::vector<std::string>& comments) {
  std::string out;
  for (std::string comment : comments) {
    std::replace(comment.begin(), comment.end(), '\n', ' ');  // a comment that wraps would become a row
    out += "# " + comment + '\n';
  }
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    const Column& column = table.columns[c];
    out += (c == 0 ? "" : ",") + quoted(column.units.empty() ? column.name : column.name + " [" + column.units + "]");
  }
  out += '\n';
  for (const auto& row : table.rows) {
    for (std::size_t c = 0; c < row.size(); ++c) out += (c == 0 ? "" : ",") + printed(row[c], table.columns[c]);
    out += '\n';
  }
  return out;
}

}  // namespace stillground::present
