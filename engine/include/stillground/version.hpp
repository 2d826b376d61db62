#pragma once

#include <stillground/export.hpp>

#include <string>

namespace stillground {

/// The project's version, "0.1.0", as CMake knows it.
STILLGROUND_EXPORT const std::string& version();

/// What the programs were built with: compiler, build type and flags, without any path or date, so that equal builds
/// say the same. Results made by different builds may differ in the last bits; a result carries this string.
STILLGROUND_EXPORT const std::string& build();

}  // namespace stillground
