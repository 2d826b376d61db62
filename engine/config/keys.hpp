#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/keys/key.hpp"

namespace stillground::config {

using keys::Key;
using keys::Kind;
using keys::Need;

/// Every key, parents before their children: the table here and, within `bore`, the loop types' own rows.
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
