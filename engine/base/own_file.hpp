#pragma once

#include <filesystem>

namespace stillground {

/// The file that holds this code while it runs, without symbolic links: the shared library that it was linked into, or
/// else the program. Throws SystemError where the system does not tell.
std::filesystem::path own_file();

}  // namespace stillground
