#include "engine/config/keys.hpp"

#include <fmt/format.h>

#include <cassert>

namespace stillground::config {

const Key& key(std::string_view path) {
  for (const Key& row : keys()) {
    if (row.path == path) return row;
  }
  assert(!"a path outside the table of keys");
  std::abort();
}

std::vector<const Key*> keys_below(std::string_view path) {
  std::vector<const Key*> below;
  for (const Key& row : keys()) {
    const std::size_t dot = row.path.rfind('.');
    const std::string_view parent = dot == row.path.npos ? std::string_view{} : row.path.substr(0, dot);
    if (parent == path) below.push_back(&row);
  }
  return below;
}

std::string examples(const Key& row) {
  if (row.example.empty()) return std::string(units::facts(row.dimension).examples);
  if (row.example2.empty()) return fmt::format("\"{}\"", row.example);
  return fmt::format("\"{}\" or \"{}\"", row.example, row.example2);
}

std::vector<std::string> words(const Key& row) {
  std::vector<std::string> parts;
  for (std::string_view rest = row.words; !rest.empty();) {
    const std::size_t bar = std::min(rest.find('|'), rest.size());
    parts.emplace_back(rest.substr(0, bar));
    rest.remove_prefix(std::min(bar + 1, rest.size()));
  }
  return parts;
}

}  // namespace stillground::config
