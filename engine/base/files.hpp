#pragma once

#include <cstddef>
#include <filesystem>
#include <string>

#include "engine/base/where.hpp"

namespace stillground {

/// Nobody writes an input file beyond this by hand or by the hour.
inline constexpr std::size_t largest_input_file = std::size_t{1} << 30;

/// The whole of a regular file. An InputError at `where` says what is the matter: no such file, a folder, a device, not
/// permitted, larger than `most` bytes.
std::string read_file(const std::filesystem::path& file, const Where& where = {},
                      std::size_t most = largest_input_file);

}  // namespace stillground
