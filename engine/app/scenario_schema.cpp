#include "engine/app/scenario_schema.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <string_view>

#include "engine/config/keys.hpp"

namespace stillground::app {

namespace {

using config::Key;
using config::Kind;
using Json = nlohmann::ordered_json;

Json keys_of(std::string_view pattern);

std::string description(const Key& key) {
  std::string text(key.help);
  const auto add = [&](const std::string& part) { text += (text.empty() ? "" : "; ") + part; };
  if (!key.least.empty()) add(fmt::format("{} to {}", key.least, key.most));
  if (!key.preset.empty()) add(fmt::format("{} if absent", key.preset));
  return text;
}

/// The keys that stand inside a map or an item: in place, or where they stand already.
Json inside(const Key& key) {
  const std::string_view pattern = key.inside.empty() ? key.path : key.inside;
  const bool shown_elsewhere = pattern != key.path && pattern.find_first_of("[*") == pattern.npos;
  if (!shown_elsewhere) return keys_of(pattern);
  std::string pointer = "#/properties/";
  for (const char c : pattern) pointer += c == '.' ? std::string("/properties/") : std::string(1, c);
  return {{"$ref", pointer}};
}

/// YAML reads 0.20 as a number and 2027 as a whole one; both may be written without quotation marks.
Json text_or(const char* also) {
  return {{"type", {"string", also}}};
}

Json with_range(const char* type, const Key& key, const char* least = "minimum") {
  Json value = {{"type", type}};
  const auto bound = [&](const char* name, std::string_view written) {
    if (!written.empty()) value[name] = Json::parse(written);
  };
  bound(least, key.least);
  bound("maximum", key.most);
  return value;
}

/// A single value of a key of kind `either`.
Json single_value(const Key& key) {
  if (!key.words.empty()) return {{"enum", config::words(key)}};
  return {{"type", "string"}};
}

Json value_of(const Key& key) {
  switch (key.kind) {
    case Kind::map:
      return inside(key);
    case Kind::list:
      return {{"type", "array"}, {"items", inside(key)}};
    case Kind::curve:
      return {{"type", "object"},
              {"minProperties", 1},
              {"additionalProperties", with_range("number", key, "exclusiveMinimum")}};
    case Kind::word:
      return {{"enum", config::words(key)}};
    case Kind::quantity:
      return key.dimension == units::Dimension::fraction ? text_or("number") : Json{{"type", "string"}};
    case Kind::number:
      return with_range("number", key);
    case Kind::whole:
      return with_range("integer", key);
    case Kind::date:
      return text_or("integer");
    case Kind::either: {
      const bool or_keys = !config::keys_below(key.inside.empty() ? key.path : key.inside).empty();
      return or_keys ? Json{{"anyOf", {single_value(key), inside(key)}}} : single_value(key);
    }
    case Kind::text:
    case Kind::file:
    case Kind::column:
      return {{"type", "string"}};
  }
  std::abort();
}

Json described(const Key& key) {
  Json value = value_of(key);
  if (const std::string text = description(key); !text.empty()) value["description"] = text;
  if (key.kind != Kind::quantity) return value;
  for (const std::string_view example : {key.example, key.example2}) {
    if (!example.empty()) value["examples"].push_back(example);
  }
  return value;
}

Json keys_of(std::string_view pattern) {
  Json properties = Json::object(), required = Json::array();
  const auto rows = config::keys_below(pattern);
  // A catalogue entry named by `use` brings what would else be needed.
  const bool may_use = std::any_of(rows.begin(), rows.end(), [](const Key* row) { return row->leaf() == "use"; });
  for (const Key* row : rows) {
    const std::string leaf(row->leaf());
    properties[leaf] = described(*row);
    if (row->need == config::Need::required && !may_use) required.push_back(leaf);
  }
  Json map = {{"type", "object"}, {"additionalProperties", false}, {"properties", properties}};
  if (!required.empty()) map["required"] = required;
  return map;
}

}  // namespace

std::string scenario_schema() {
  Json schema = {{"$schema", "https://json-schema.org/draft/2020-12/schema"}, {"title", "stillground scenario"}};
  schema.update(keys_of(""));
  return schema.dump(2) + "\n";
}

}  // namespace stillground::app
