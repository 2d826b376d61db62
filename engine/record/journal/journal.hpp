#pragma once

#include <cstddef>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "engine/record/frames.hpp"

namespace stillground::record {

/// The running record of one simulation: an append-only file beside the result-to-be ("RESULT.h5.spool"), synced to
/// disk at every checkpoint. A kill costs what came after the last checkpoint, never what came before it.
class Journal {
 public:
  /// Starts a new journal for `result`, replacing one that an earlier run left. Throws SystemError if it cannot be
  /// written.
  static Journal create(const std::filesystem::path& result, const Header& header);

  /// Opens the journal that an interrupted run left for `result`, cut back to its last checkpoint. Throws InputError if
  /// there is none or if it belongs to another scenario, input file, engine version or build (says which).
  static Journal resume(const std::filesystem::path& result, const Header& header);

  /// What stands beside `result`, looked at without changing it.
  struct Saved {
    std::string instruction_set;  ///< that it was marched with
    bool checkpoint = false;      ///< whether hours of work are kept in it
  };

  /// Nothing if there is no journal. Throws BeingWritten (an InputError, see log_file.hpp) if another run is
  /// writing it, InputError if it is none of this version.
  static std::optional<Saved> look(const std::filesystem::path& result);

  ~Journal();
  Journal(Journal&&) noexcept;
  Journal& operator=(Journal&&) noexcept;

  /// Hours are best handed over by the day or more.
  void append(std::span<const Hour> hours);
  void append(const Snapshot& snapshot);
  void append(const YearMean& mean);
  void append(const YearBalance& balance);

  /// Makes everything appended so far durable together with the march's state (opaque bytes).
  void checkpoint(std::span<const std::byte> state);

  /// State of the last checkpoint; empty if there is none yet.
  const std::vector<std::byte>& state() const;

  /// Reads back everything appended so far, in its order, hours as they were handed over.
  void replay(const std::function<void(Frame)>& each);

  /// Deletes the file: the result is complete and under its final name.
  void discard();

 private:
  struct File;
  explicit Journal(std::unique_ptr<File> file);
  std::unique_ptr<File> file_;
};

}  // namespace stillground::record
