#pragma once

#include <string>
#include <vector>

#include "engine/config/read.hpp"
#include "tests/cli/broken/cases.hpp"
#include "tests/unit/base/scratch.hpp"

namespace stillground::testing {

/// The good scenario of tests/cli/broken after some edits (their language is in cases.hpp), read.
inline model::Scenario read_edited(const std::vector<std::string>& edits,
                                   const std::filesystem::path& catalogues = {}) {
  const Scratch scratch;
  return config::read_scenario(make_broken({"", edits, ""}, scratch.folder), std::nullopt, catalogues);
}

inline const std::string surface =
    "surface_mean: 10.4 degC\\n    surface_swing: 9 K\\n    coldest_day: 25\\n    heat_flow: 0.065 W/m2";
inline const std::string grid = "grid: {rows: 3, columns: 2, spacing: 6 m}";

}  // namespace stillground::testing
