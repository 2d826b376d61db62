#pragma once

#include <string>
#include <vector>

#include "engine/config/tree.hpp"

namespace stillground::config {

/// What stands at a key of the scenario in place of its own value, as a plan of many scenarios gives it.
struct Override {
  std::string path;  ///< as messages name keys: "field.grid.spacing", "ground.layers[2].conductivity", or a whole block
  Place place;       ///< where the path is written; what is wrong with it is said there
  Node value;        ///< what stands at the key
};

/// A plain value at a key, from no file or from a place in one.
Override plain_override(const std::string& path, const std::string& text, const Place& place = {});

/// Puts the value at its key; maps on the way that are not there are made. The key itself is not judged here: a name
/// that is none is refused with the scenario's shape, at the override's place. Throws InputError, there, for a path
/// that is none ("bore..depth"), for an item that a list has not, and for a way that goes through a plain value.
void put_in_place(const Override& given, Node& tree);

/// The tree as YAML that is read to the same tree, places apart.
std::string written(const Node& tree);

/// The text of a scenario that stands for `original` with these values in place, for a result to keep: which values
/// they are as comments, then the keys.
std::string text_with(const std::vector<Override>& overrides, const Node& tree, const std::string& original);

/// A value on one line, as it would be written: `6 m`, `{bores: 12, spacing: 6 m}`.
std::string on_one_line(const Node& value);

}  // namespace stillground::config
