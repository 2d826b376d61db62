#pragma once

#include <filesystem>

#include "engine/model/scenario.hpp"

namespace stillground::config {

/// Reads a scenario file and every file it names (catalogue entries, loads, positions, profiles), relative to its
/// folder. Everything that can be judged without physics is judged here. Throws InputError (file:line:col, key, found,
/// allowed).
model::Scenario read_scenario(const std::filesystem::path& file);

}  // namespace stillground::config
