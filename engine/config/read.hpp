#pragma once

#include <filesystem>
#include <optional>
#include <vector>

#include "engine/config/overrides.hpp"
#include "engine/model/scenario.hpp"

namespace stillground::config {

/// Reads a scenario file and every file it names (catalogue entries, loads, positions, profiles), relative to its
/// folder. Everything that can be judged without physics is judged here. Throws InputError (file:line:col, key, found,
/// allowed). `units`: in which people are shown figures, before what the scenario says itself. `catalogues`: their
/// folder, unless the environment variable STILLGROUND_CONFIGS names one; empty: see installed_catalogues, of the
/// program's or library's own file. `overrides`: values of a plan that stand in place of the scenario's own and are
/// judged as they are, at their own places; the scenario's text is then the one with them.
model::Scenario read_scenario(const std::filesystem::path& file, std::optional<UnitSystem> units = std::nullopt,
                              const std::filesystem::path& catalogues = {},
                              const std::vector<Override>& overrides = {});

/// Judges the names alone: puts the values into the scenario's tree and refuses keys that are none and values that have
/// another shape than their key. Throws InputError as read_scenario.
void check_overrides(const std::filesystem::path& file, const std::vector<Override>& overrides);

}  // namespace stillground::config
