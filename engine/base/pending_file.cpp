#include "engine/base/pending_file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <array>
#include <atomic>
#include <cerrno>
#include <cstring>
#include <string>
#include <utility>

#include "engine/base/descriptor.hpp"
#include "engine/base/errors.hpp"

namespace stillground {

namespace {

[[noreturn]] void fail(const std::filesystem::path& file, const char* what) {
  throw SystemError(fmt::format("{}: {}: {}", file.string(), what, std::strerror(errno)));
}

void sync_file(const std::filesystem::path& path, const std::filesystem::path& named) {
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (!file.open()) fail(named, "cannot be opened");
  if (::fsync(file.number()) != 0 && errno != EINVAL) fail(named, "cannot be synced to disk");
}

/// A folder that may be written in but not read, or whose file system cannot sync it: the rename is as durable as that.
void sync_folder(const std::filesystem::path& path) {
  const Descriptor folder(::open(path.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (folder.open()) ::fsync(folder.number());
}

}  // namespace

PendingFile::PendingFile(std::filesystem::path final_name, const std::string& ending)
    : final_name_(std::move(final_name)), temporary_(final_name_.string() + ending) {}

PendingFile::~PendingFile() {
  if (committed_) return;
  std::error_code ignored;
  std::filesystem::remove(temporary_, ignored);
}

void PendingFile::commit() {
  sync_file(temporary_, final_name_);
  if (std::rename(temporary_.c_str(), final_name_.c_str()) != 0) fail(final_name_, "cannot be put in place");
  committed_ = true;
  const std::filesystem::path folder = final_name_.has_parent_path() ? final_name_.parent_path() : ".";
  sync_folder(folder);
}

namespace {

void fill_and_commit(PendingFile& pending, const std::filesystem::path& file, std::string_view content) {
  {
    const Descriptor out(::open(pending.temporary().c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666));
    if (!out.open()) fail(file, "cannot be written");
    while (!content.empty()) {
      const ssize_t n = ::write(out.number(), content.data(), content.size());
      if (n < 0 && errno == EINTR) continue;
      if (n < 0) fail(file, "cannot be written");
      content.remove_prefix(static_cast<std::size_t>(n));
    }
  }
  pending.commit();
}

/// Like no other process's at this time, on no machine.
std::string own_ending() {
  std::array<char, 256> host{};
  ::gethostname(host.data(), host.size() - 1);
  static std::atomic<unsigned> count{0};
  return fmt::format(".{}-{}-{}.part", host.data(), ::getpid(), ++count);
}

}  // namespace

void write_whole(const std::filesystem::path& file, std::string_view content) {
  PendingFile pending(file);
  fill_and_commit(pending, file, content);
}

void write_whole_by_many(const std::filesystem::path& file, std::string_view content) {
  PendingFile pending(file, own_ending());
  fill_and_commit(pending, file, content);
}

}  // namespace stillground
