#pragma once

#include <filesystem>

#include "engine/record/frames.hpp"
#include "engine/record/spool/spool.hpp"

namespace stillground::record {

/// Writes the result file (HDF5 that is valid netCDF-4; names, dimensions and units from record/schema.hpp) under a
/// temporary name and renames it into place when it is complete and synced: under its final name a file is whole or
/// absent. Equal input gives equal bytes. Throws SystemError if the disk refuses (naming file and reason), leaving
/// nothing behind.
void write_result(const std::filesystem::path& file, const Header& header, const Spool& spool, const Closing& closing);

}  // namespace stillground::record
