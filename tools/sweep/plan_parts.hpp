#pragma once

#include "tools/sweep/plan.hpp"

/// What reads the parts of a plan.
namespace stillground::sweep {

/// Refuses keys of a map that are not among `known`, with the nearest one. `path`: of the map, empty for the plan.
void check_keys(const config::Node& map, const std::string& path, const std::vector<std::string>& known);

/// The text of a plain value at `key`.
const std::string& plain_text(const config::Node& value, const std::string& key);

/// `vary`: each key's list or range.
std::vector<Axis> read_axes(const config::Node& vary);

Prices read_prices(const config::Node& prices);

}  // namespace stillground::sweep
