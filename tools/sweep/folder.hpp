#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "tools/sweep/record.hpp"

namespace stillground::sweep {

/// Where a sweep keeps what it has. A point's record is named by the digest of all that decides its figures, so that a
/// changed plan finds what is still true and computes the rest; no folder is ever listed.
///   points/1f/1f3a9c04b2d1e871.json    one point by one method
///   results/1f/1f3a9c04b2d1e871.h5     its result, if it was marched or kept
///   summary.csv, *.svg
class Folder {
 public:
  /// Makes the folder if there is none. Throws InputError, at -o, for one that holds something and is no sweep's, and
  /// for a file.
  explicit Folder(std::filesystem::path path);

  const std::filesystem::path& path() const { return path_; }

  std::optional<Record> read(const std::string& digest) const;

  /// Whole or not at all, and safe where another process writes the same one at the same time.
  void write(const std::string& digest, const Record& record) const;

  /// Where a result goes; its folder is there afterwards.
  std::filesystem::path result(const std::string& digest) const;

  /// That place relative to the folder, if a result stands there.
  std::string kept_result(const std::string& digest) const;

 private:
  std::filesystem::path record_file(const std::string& digest) const;

  std::filesystem::path path_;
};

}  // namespace stillground::sweep
