#include "engine/base/pending_file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <string>
#include <utility>

#include "engine/base/errors.hpp"

namespace stillground {

namespace {

[[noreturn]] void fail(const std::filesystem::path& file, const char* what) {
  throw SystemError(fmt::format("{}: {}: {}", file.string(), what, std::strerror(errno)));
}

/// A descriptor that closes itself.
class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  int number() const { return number_; }

 private:
  int number_;
};

void sync(const std::filesystem::path& path, int flags, const std::filesystem::path& named) {
  const Descriptor descriptor(::open(path.c_str(), flags | O_CLOEXEC));
  if (descriptor.number() < 0) fail(named, "cannot be opened");
  // Some file systems cannot sync a folder; the rename is then as durable as they make it.
  if (::fsync(descriptor.number()) != 0 && errno != EINVAL) fail(named, "cannot be synced to disk");
}

}  // namespace

PendingFile::PendingFile(std::filesystem::path final_name)
    : final_name_(std::move(final_name)), temporary_(final_name_.string() + ".part") {}

PendingFile::~PendingFile() {
  if (committed_) return;
  std::error_code ignored;
  std::filesystem::remove(temporary_, ignored);
}

void PendingFile::commit() {
  sync(temporary_, O_RDONLY, final_name_);
  if (std::rename(temporary_.c_str(), final_name_.c_str()) != 0) fail(final_name_, "cannot be put in place");
  committed_ = true;
  const std::filesystem::path folder = final_name_.has_parent_path() ? final_name_.parent_path() : ".";
  sync(folder, O_RDONLY | O_DIRECTORY, final_name_);
}

void write_whole(const std::filesystem::path& file, std::string_view content) {
  PendingFile pending(file);
  {
    const Descriptor out(::open(pending.temporary().c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666));
    if (out.number() < 0) fail(file, "cannot be written");
    while (!content.empty()) {
      const ssize_t n = ::write(out.number(), content.data(), content.size());
      if (n < 0 && errno == EINTR) continue;
      if (n < 0) fail(file, "cannot be written");
      content.remove_prefix(static_cast<std::size_t>(n));
    }
  }
  pending.commit();
}

}  // namespace stillground
