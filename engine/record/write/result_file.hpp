#pragma once

#include <cstddef>
#include <filesystem>
#include <memory>
#include <span>

#include "engine/record/frames.hpp"

namespace stillground::record {

/// A result file in the making (HDF5 that is valid netCDF-4; names, dimensions and units from record/schema.hpp). It
/// takes a run's frames while the run goes on, packs and writes them on a thread of its own under a temporary name, and
/// renames the file into place when it is complete and synced: under its final name a file is whole or absent. Equal
/// frames in equal order give equal bytes, however the hours are cut. Without finish() it leaves nothing behind. Every
/// member throws SystemError, naming file and reason, if the disk has refused, and std::logic_error for frames that do
/// not fit the header.
class ResultFile {
 public:
  /// `snapshots`: how many will come; yearly means will with `fields: yearly`, years and hours as the header says.
  ResultFile(std::filesystem::path path, const Header& header, std::size_t snapshots);
  ~ResultFile();
  ResultFile(const ResultFile&) = delete;
  ResultFile& operator=(const ResultFile&) = delete;

  void add(std::span<const Hour> hours);
  void add(Snapshot snapshot);
  void add(YearMean mean);
  void add(const YearBalance& balance);

  /// Waits for what is still being written, writes the rest and puts the file in place.
  void finish(const Closing& closing);

 private:
  struct Open;
  std::unique_ptr<Open> open_;
};

}  // namespace stillground::record
