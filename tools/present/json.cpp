#include "tools/present/json.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdlib>

namespace stillground::present {

namespace {

Json value_of(const Cell& cell, const Column& column = {}) {
  if (const auto* word = std::get_if<std::string>(&cell)) return *word;
  if (const auto* count = std::get_if<long>(&cell)) return *count;
  const auto* real = std::get_if<double>(&cell);
  if (real == nullptr || !std::isfinite(*real)) return nullptr;
  return std::strtod(for_machines(*real, column).c_str(), nullptr);
}

std::string units_or_one(const std::string& units) {
  return units.empty() ? "1" : units;
}

bool holds_text(const Table& table, std::size_t c) {
  return std::any_of(table.rows.begin(), table.rows.end(),
                     [c](const auto& row) { return std::holds_alternative<std::string>(row[c]); });
}

}  // namespace

Json number(double value) {
  return value_of(value);
}

Json quantity(double value, const std::string& units) {
  return {{"value", number(value)}, {"units", units_or_one(units)}};
}

Json single(const Cell& cell, const std::string& units) {
  if (std::holds_alternative<std::string>(cell)) return std::get<std::string>(cell);
  return {{"value", value_of(cell)}, {"units", units_or_one(units)}};
}

Json columns(const Table& table) {
  Json object = Json::object();
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    Json list = Json::array();
    for (const auto& row : table.rows) list.push_back(value_of(row[c], table.columns[c]));
    Json column = Json::object();
    if (!holds_text(table, c)) column["units"] = units_or_one(table.columns[c].units);
    column["values"] = list;
    object[table.columns[c].name] = column;
  }
  return object;
}

std::string dump(const Json& object) {
  return object.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

}  // namespace stillground::present
