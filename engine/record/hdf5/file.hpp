#pragma once

#include <filesystem>

#include "engine/record/hdf5/handle.hpp"

namespace stillground::record::hdf5 {

/// An open HDF5 file; variables and attributes hang on its root group.
class File {
 public:
  /// A new file (replacing one of that name) laid out as netCDF-4 asks: links and attributes keep the order of their
  /// creation. No time stamps, so that equal content gives equal bytes.
  static File create(const std::filesystem::path& path);
  /// An existing file, to be read only.
  static File open(const std::filesystem::path& path);

  /// Not closed properly (an exception is on its way): what is still unwritten is thrown away. See abandon().
  ~File();
  File(File&&) noexcept = default;
  File& operator=(File&&) noexcept = default;

  hid_t id() const { return file_.id(); }
  bool has(const char* name) const;

  /// Flushes and closes; throws Failure if the disk refuses. Close every dataset before.
  void close();

 private:
  explicit File(Handle file, bool writable) : file_(std::move(file)), writable_(writable) {}
  /// The system's descriptor under it, kept by the library; null if it has none.
  int* descriptor() const;
  /// Claims the disk's blocks for all that is not yet written. HDF5 1.10.8 cannot close a file once a flush has failed:
  /// so a full disk has to say so before.
  void reserve() const;
  void abandon() noexcept;

  Handle file_;
  bool writable_ = false;
};

}  // namespace stillground::record::hdf5
