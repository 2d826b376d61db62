#include "engine/record/journal/log_file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <libdeflate.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <utility>

#include "engine/base/errors.hpp"

namespace stillground::record {

namespace {

constexpr std::array<char, 8> mark = {'s', 't', 'i', 'l', 'l', 'g', '0', '3'};  ///< the digits: version of the layout
constexpr std::size_t buffer_limit = std::size_t{1} << 20;

/// What stands before a record's bytes.
struct Head {
  std::uint32_t type;
  std::uint32_t crc;  ///< of type, length and bytes
  std::uint64_t length;
};
static_assert(sizeof(Head) == LogFile::head_size);

std::uint32_t crc_of(std::uint32_t type, std::span<const std::byte> bytes) {
  const std::uint64_t length = bytes.size();
  std::uint32_t crc = libdeflate_crc32(0, &type, sizeof type);
  crc = libdeflate_crc32(crc, &length, sizeof length);
  return libdeflate_crc32(crc, bytes.data(), bytes.size());
}

[[noreturn]] void fail_at(const std::filesystem::path& path, const char* what) {
  throw SystemError(fmt::format("{}: {}: {}", path.string(), what, std::strerror(errno)));
}

void lock(int descriptor, const std::filesystem::path& path) {
  if (::flock(descriptor, LOCK_EX | LOCK_NB) == 0) return;
  if (errno == EWOULDBLOCK) throw BeingWritten({path.string()}, "", "another run is writing it; let that one finish");
  // Some network file systems know no locks: work on, as before there were any.
}

/// The other process may have deleted the file between our opening and our locking it.
bool still_named(int descriptor, const std::filesystem::path& path) {
  struct stat held {
  }, named{};
  return ::fstat(descriptor, &held) == 0 && ::stat(path.c_str(), &named) == 0 && held.st_dev == named.st_dev &&
         held.st_ino == named.st_ino;
}

void sync_folder(const std::filesystem::path& path) {
  const auto folder = path.has_parent_path() ? path.parent_path() : std::filesystem::path(".");
  const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (descriptor < 0) return;  // a folder we may write in but not read: the file itself is synced all the same
  ::fsync(descriptor);
  ::close(descriptor);
}

}  // namespace

LogFile LogFile::create(const std::filesystem::path& path) {
  for (;;) {
    LogFile log(path, ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666));
    if (log.descriptor_ < 0) fail_at(path, "cannot be created");
    lock(log.descriptor_, path);
    if (!still_named(log.descriptor_, path)) continue;
    log.cut(0);
    const auto raw = std::as_bytes(std::span(mark));
    log.buffer_.assign(raw.begin(), raw.end());
    log.sync();
    sync_folder(path);
    return log;
  }
}

LogFile LogFile::open(const std::filesystem::path& path) {
  LogFile log(path, ::open(path.c_str(), O_RDWR | O_CLOEXEC));
  if (log.descriptor_ < 0 && errno == ENOENT) {
    throw InputError({path.string()}, "", "does not exist: there is no interrupted run to go on with");
  }
  if (log.descriptor_ < 0) fail_at(path, "cannot be opened");
  lock(log.descriptor_, path);
  std::array<char, mark.size()> found{};
  if (!log.load_bytes(0, std::as_writable_bytes(std::span(found))) || found != mark) {
    throw InputError({path.string()}, "",
                     "is not the record of an interrupted run of this version; --fresh throws it away");
  }
  struct stat status {};
  if (::fstat(log.descriptor_, &status) != 0) fail_at(path, "cannot be read");
  log.written_ = static_cast<Offset>(status.st_size);
  return log;
}

LogFile::~LogFile() {
  // What is still buffered came after the last checkpoint and would be cut off by whoever resumes.
  if (descriptor_ >= 0) ::close(descriptor_);
}

LogFile::LogFile(LogFile&& other) noexcept
    : path_(std::move(other.path_)),
      descriptor_(std::exchange(other.descriptor_, -1)),
      written_(other.written_),
      buffer_(std::move(other.buffer_)) {}

LogFile& LogFile::operator=(LogFile&& other) noexcept {
  std::swap(path_, other.path_);
  std::swap(descriptor_, other.descriptor_);
  std::swap(written_, other.written_);
  std::swap(buffer_, other.buffer_);
  return *this;
}

LogFile::Offset LogFile::append(std::uint32_t type, std::span<const std::byte> bytes) {
  const Offset at = end();
  const Head head{type, crc_of(type, bytes), bytes.size()};
  const auto raw = std::as_bytes(std::span(&head, 1));
  buffer_.insert(buffer_.end(), raw.begin(), raw.end());
  buffer_.insert(buffer_.end(), bytes.begin(), bytes.end());
  if (buffer_.size() >= buffer_limit) flush();
  return at;
}

void LogFile::flush() {
  // Always to the same place: after a failure (a full disk) the same bytes may be tried again.
  std::size_t done = 0;
  while (done < buffer_.size()) {
    const ssize_t n =
        ::pwrite(descriptor_, buffer_.data() + done, buffer_.size() - done, static_cast<off_t>(written_ + done));
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) fail("cannot be written");
    done += static_cast<std::size_t>(n);
  }
  written_ += done;
  buffer_.clear();
}

void LogFile::sync() {
  flush();
  if (::fdatasync(descriptor_) != 0) fail("cannot be synced to disk");
}

bool LogFile::load_bytes(Offset at, std::span<std::byte> into) const {
  while (!into.empty()) {
    const ssize_t n = ::pread(descriptor_, into.data(), into.size(), static_cast<off_t>(at));
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) fail("cannot be read");
    if (n == 0) return false;
    at += static_cast<Offset>(n);
    into = into.subspan(static_cast<std::size_t>(n));
  }
  return true;
}

bool LogFile::load(Offset at, std::uint32_t& type, Bytes& bytes) const {
  Head head{};
  if (at + sizeof(Head) > written_ || !load_bytes(at, std::as_writable_bytes(std::span(&head, 1)))) return false;
  if (head.length > written_ - at - sizeof(Head)) return false;  // before the memory for it is asked for
  type = head.type;
  bytes.resize(head.length);
  return load_bytes(at + sizeof(Head), bytes) && crc_of(head.type, bytes) == head.crc;
}

void LogFile::scan(const std::function<bool(const Record&)>& visit) {
  flush();
  std::uint32_t type = 0;
  Bytes bytes;
  for (Offset at = mark.size(); load(at, type, bytes) && visit({at, type, bytes});) at += sizeof(Head) + bytes.size();
}

void LogFile::cut(Offset end) {
  buffer_.clear();
  if (::ftruncate(descriptor_, static_cast<off_t>(end)) != 0) fail("cannot be cut back");
  written_ = end;
  if (::fsync(descriptor_) != 0) fail("cannot be synced to disk");
}

void LogFile::remove() {
  if (::unlink(path_.c_str()) != 0 && errno != ENOENT) fail("cannot be deleted");
  ::close(std::exchange(descriptor_, -1));
}

void LogFile::fail(const char* what) const {
  fail_at(path_, what);
}

}  // namespace stillground::record
