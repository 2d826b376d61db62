#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace stillground {

/// A file that is whole or absent: written under a temporary name in the same folder, synced and renamed into place by
/// `commit`. Without a commit the temporary file is removed and whatever stood under the final name stays as it was.
class PendingFile {
 public:
  explicit PendingFile(std::filesystem::path final_name, const std::string& ending = ".part");
  ~PendingFile();
  PendingFile(const PendingFile&) = delete;
  PendingFile& operator=(const PendingFile&) = delete;

  /// Where to write until then. Close the file before `commit`.
  const std::filesystem::path& temporary() const { return temporary_; }

  /// Syncs the file and its folder to disk around the rename. Throws SystemError naming the file and the reason.
  void commit();

 private:
  std::filesystem::path final_name_;
  std::filesystem::path temporary_;
  bool committed_ = false;
};

/// Replaces `file` by `content`, whole or not at all. Throws SystemError naming the file and the reason.
void write_whole(const std::filesystem::path& file, std::string_view content);

/// The same where several processes, of one machine or of many on a shared disk, may write the file at once: each has a
/// temporary name of its own, and the last one stands.
void write_whole_by_many(const std::filesystem::path& file, std::string_view content);

}  // namespace stillground
