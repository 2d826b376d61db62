#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/units/dimension.hpp"

namespace stillground::config {

/// What may stand at a key.
enum class Kind {
  map,       ///< keys of its own
  list,      ///< of maps
  curve,     ///< temperatures as keys, numbers as values
  text,      ///< one line
  word,      ///< one of `words`
  quantity,  ///< a number with a unit
  number,    ///< without a unit
  whole,     ///< a whole number
  date,      ///< 2027, 2027-07 or 2027-07-01
  file,      ///< relative to the scenario's folder
  column,    ///< the name of a column of a file
  either,    ///< one of several of these; the help says which
};

enum class Need { required, optional };

/// One key of the scenario, said once: it feeds the reader, the messages, the suggestions and the pages about keys.
struct Key {
  std::string_view path;  ///< dotted; "[]" stands for each item of a list, "*" for each limit
  Kind kind = Kind::text;
  Need need = Need::optional;
  units::Dimension dimension = units::Dimension::fraction;  ///< of a quantity
  std::string_view preset = {};    ///< what holds when the key is absent, as it would be written
  std::string_view least = {};     ///< smallest value allowed, as it would be written
  std::string_view most = {};      ///< largest value allowed
  std::string_view words = {};     ///< allowed words, parted by "|"
  std::string_view example = {};   ///< as it would be written
  std::string_view example2 = {};  ///< the same on the other continent
  std::string_view help = {};
  std::string_view inside = {};  ///< where the keys below it are found in the table, if not under `path`

  std::string_view leaf() const;  ///< after the last dot
};

/// Every key, parents before their children.
std::span<const Key> keys();

/// The row of a path; the path must exist.
const Key& key(std::string_view path);

/// The rows right below a path ("bore" gives bore.top, bore.depth, ...).
std::vector<const Key*> keys_below(std::string_view path);

/// `"120 m" or "400 ft"`: the row's own examples, else those of its dimension.
std::string examples(const Key& row);

/// Parts "a|b|c".
std::vector<std::string> words(const Key& row);

}  // namespace stillground::config
