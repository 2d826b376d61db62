#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <span>

#include "engine/base/errors.hpp"
#include "engine/record/journal/bytes.hpp"

namespace stillground::record {

/// Another process holds the file.
class BeingWritten : public InputError {
  using InputError::InputError;
};

/// An append-only file of records, each of a type, a length, its bytes and a CRC-32 of all three, behind eight bytes
/// that say what the file is. One process at a time holds it. Every member throws SystemError (file, reason) if the
/// disk fails.
class LogFile {
 public:
  using Offset = std::uint64_t;
  static constexpr Offset head_size = 16;  ///< what stands before a record's bytes: type, CRC, length

  struct Record {
    Offset at;  ///< where it begins
    std::uint32_t type;
    std::span<const std::byte> bytes;
  };

  /// A new, empty log; throws BeingWritten if another process holds the one there is.
  static LogFile create(const std::filesystem::path& path);
  /// The log that is there; throws InputError if there is none or if it is no log, BeingWritten if another process
  /// holds it.
  static LogFile open(const std::filesystem::path& path);

  ~LogFile();
  LogFile(LogFile&& other) noexcept;
  LogFile& operator=(LogFile&& other) noexcept;

  const std::filesystem::path& path() const { return path_; }
  Offset end() const { return written_ + buffer_.size(); }

  /// Appends a record (buffered) and returns where it begins.
  Offset append(std::uint32_t type, std::span<const std::byte> bytes);
  /// Makes everything appended so far durable.
  void sync();
  /// Visits the records in order up to the first damaged or unfinished one, or until `visit` returns false.
  void scan(const std::function<bool(const Record&)>& visit);
  /// Forgets everything from `end` on, on the disk too.
  void cut(Offset end);
  /// Deletes the file; nothing may be done with it afterwards.
  void remove();

 private:
  LogFile(std::filesystem::path path, int descriptor) : path_(std::move(path)), descriptor_(descriptor) {}
  void flush();
  /// The record at `at`, its bytes in `bytes`; false if none stands there whole.
  bool load(Offset at, std::uint32_t& type, Bytes& bytes) const;
  bool load_bytes(Offset at, std::span<std::byte> into) const;
  [[noreturn]] void fail(const char* what) const;

  std::filesystem::path path_;
  int descriptor_ = -1;
  Offset written_ = 0;  ///< what has been handed to the system
  Bytes buffer_;        ///< what follows it
};

}  // namespace stillground::record
