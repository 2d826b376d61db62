#pragma once

#include <string_view>

#include "engine/units/dimension.hpp"

namespace stillground::keys {

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
  std::string_view example2 = {};  ///< the same in the other unit system
  std::string_view help = {};
  std::string_view inside = {};  ///< where the keys below it are found in the table, if not under `path`

  /// What follows the last dot.
  constexpr std::string_view leaf() const {
    const std::size_t dot = path.rfind('.');
    return dot == path.npos ? path : path.substr(dot + 1);
  }
};

}  // namespace stillground::keys
