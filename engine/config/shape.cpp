#include "engine/config/shape.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <vector>

#include "engine/base/quote.hpp"
#include "engine/base/spelling.hpp"
#include "engine/base/where.hpp"
#include "engine/config/keys.hpp"

namespace stillground::config {
namespace {

using Places = std::map<std::string, Place>;

std::string joined(const std::string& path, std::string_view leaf) {
  return path.empty() ? std::string(leaf) : fmt::format("{}.{}", path, leaf);
}

[[noreturn]] void refuse_unknown(const Entry& entry, std::string_view pattern, const std::string& path) {
  std::vector<std::string> known;
  for (const Key* row : keys_below(pattern)) known.emplace_back(row->leaf());
  std::string advice;
  if (const auto near = nearest_word(entry.key, known)) {
    advice = fmt::format("did you mean \"{}\"?", *near);
  } else {
    advice = fmt::format("known here: {}", fmt::join(known, ", "));
    for (const Key& row : keys()) {
      if (row.leaf() == entry.key) {
        advice = fmt::format("did you mean \"{}\"?", row.path);
        break;
      }
    }
  }
  const std::string shown = quote(entry.key);
  const bool plain = !entry.key.empty() && shown == fmt::format("\"{}\"", entry.key);
  const Where where{entry.place, plain ? joined(path, entry.key) : path};
  where.refuse(plain ? fmt::format("unknown key ({})", advice) : fmt::format("unknown key {} ({})", shown, advice));
}

std::string_view kind_in_words(Node::Kind kind) {
  switch (kind) {
    case Node::Kind::scalar:
      return "a plain value";
    case Node::Kind::list:
      return "a list";
    case Node::Kind::map:
      return "a map of keys";
    case Node::Kind::none:
      break;
  }
  return "nothing";
}

[[noreturn]] void refuse_kind(const Node& value, const Where& where, const std::string& wanted) {
  where.refuse(fmt::format("{} where {}", kind_in_words(value.kind), wanted));
}

std::string example_of(const Key& row) {
  if (!row.example.empty() || row.kind == Kind::quantity) return fmt::format(" (for example {})", examples(row));
  std::vector<std::string> below;
  for (const Key* child : keys_below(row.inside.empty() ? row.path : row.inside)) below.emplace_back(child->leaf());
  return below.empty() ? "" : fmt::format(" (with keys such as {})", fmt::join(below, ", "));
}

void check_value(const Entry& entry, const Key& row, const std::string& path, Places& places);

void check_list(const Node& list, const Key& row, const std::string& path, Places& places) {
  int number = 0;
  for (const Node& item : list.items) {
    const std::string item_path = fmt::format("{}[{}]", path, ++number);
    places[item_path] = item.place;
    if (item.kind != Node::Kind::map) {
      refuse_kind(item, {item.place, item_path}, "a map of keys is expected" + example_of(row));
    }
    check_shape(item, row.inside, item_path, places);
  }
}

void check_value(const Entry& entry, const Key& row, const std::string& path, Places& places) {
  const Node& value = entry.value;
  const bool plain = value.kind == Node::Kind::scalar;
  places[path] = plain ? value.place : entry.place;
  const Where where{value.place, path};
  const std::string example = example_of(row);
  if (value.kind == Node::Kind::none) where.refuse("has no value" + example);
  const std::string_view inside = row.inside.empty() ? row.path : row.inside;
  switch (row.kind) {
    case Kind::list:
      if (value.kind != Node::Kind::list) refuse_kind(value, where, "a list is expected" + example);
      return check_list(value, row, path, places);
    case Kind::curve:
      if (value.kind != Node::Kind::map) refuse_kind(value, where, "temperatures with values are expected" + example);
      return;
    case Kind::map:
      if (value.kind != Node::Kind::map) refuse_kind(value, where, "a map of keys is expected" + example);
      return check_shape(value, inside, path, places);
    case Kind::either:
      if (value.kind == Node::Kind::map && !keys_below(inside).empty()) return check_shape(value, inside, path, places);
      break;
    default:
      break;
  }
  if (!plain) refuse_kind(value, where, "a single value is expected" + example);
}

}  // namespace

void check_shape(const Node& map, std::string_view pattern, const std::string& path, Places& places,
                 std::initializer_list<std::string_view> also) {
  const std::vector<const Key*> rows = keys_below(pattern);
  for (const Entry& entry : map.entries) {
    if (std::find(also.begin(), also.end(), entry.key) != also.end()) continue;
    const Key* found = nullptr;
    for (const Key* row : rows) {
      if (row->leaf() == entry.key) found = row;
    }
    if (!found) refuse_unknown(entry, pattern, path);
    check_value(entry, *found, joined(path, entry.key), places);
  }
}

}  // namespace stillground::config
