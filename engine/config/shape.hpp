#pragma once

#include <initializer_list>
#include <map>
#include <string>
#include <string_view>

#include "engine/config/tree.hpp"

namespace stillground::config {

/// Checks a map against the table of keys, at every level: unknown keys (with the nearest known one), keys without a
/// value, lists or maps where a plain value is expected and the other way round. `pattern` is the map's path in the
/// table
/// ("" for the scenario), `path` its path in messages, `also` more keys that are allowed. Notes where each key stands
/// in `places`: a plain value's own place, a list's or map's key. Items of a list count from 1: "ground.layers[1].to".
void check_shape(const Node& map, std::string_view pattern, const std::string& path,
                 std::map<std::string, Place>& places, std::initializer_list<std::string_view> also = {});

}  // namespace stillground::config
