#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "engine/base/errors.hpp"

namespace stillground::config {

struct Entry;

/// A value of a YAML file and where it stands. The text is as written; nothing is guessed from it.
struct Node {
  enum class Kind { none, scalar, list, map };

  Kind kind = Kind::none;
  Place place;
  std::string text;            ///< of a scalar
  std::vector<Node> items;     ///< of a list
  std::vector<Entry> entries;  ///< of a map, in their order

  /// The entry of a key, null if there is none.
  const Entry* find(std::string_view key) const;
};

struct Entry {
  std::string key;
  Place place;  ///< of the key
  Node value;
};

/// More levels than any scenario has.
inline constexpr std::size_t deepest_level = 12;

/// Reads one YAML document whose root is a map. Refused, each with its place: what is not YAML, an empty file, repeated
/// keys, keys that are not plain words, anchors, aliases, tags, several documents, more than `deepest_level` levels.
/// `file` names it in messages.
Node read_tree(std::string_view text, const std::string& file);

}  // namespace stillground::config
