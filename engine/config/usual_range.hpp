#pragma once

#include <string>
#include <vector>

#include "engine/config/tree.hpp"

namespace stillground::config {

/// Between what a value of a catalogue's entry usually lies.
struct UsualRange {
  std::string leaf;  ///< the entry's key
  double least = 0;  ///< SI
  double most = 0;   ///< SI
  std::string text;  ///< as the catalogue has it: "1.9 to 4.6 W/(m K)"
};

/// The ranges of a catalogue's entry, which its key `range` holds by the names of its other keys; none without one.
/// `pattern` is the entry's path in the table of keys, `path` in messages. InputError where a key is not a quantity of
/// the entry, a text is no range, or the entry's own value lies outside.
std::vector<UsualRange> usual_ranges(const Node& entry, const std::string& pattern, const std::string& path);

/// "usual range: conductivity 1.9 to 4.6 W/(m K), heat_capacity 1.8 to 2.6 MJ/(m3 K)"; empty without ranges.
std::string in_words(const std::vector<UsualRange>& ranges);

}  // namespace stillground::config
