#include "engine/base/files.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>

#include "engine/base/descriptor.hpp"

namespace stillground {
namespace {

namespace fs = std::filesystem;

std::string reason() {
  return std::strerror(errno);
}

}  // namespace

std::string read_file(const fs::path& file, const Where& where, std::size_t most) {
  const auto refuse = [&](const std::string& why) {
    where.refuse(fmt::format("cannot read \"{}\": {}", file.string(), why));
  };
  // Without O_NONBLOCK a named pipe that nobody writes to would hold us here for ever.
  const Descriptor handle(::open(file.c_str(), O_RDONLY | O_NONBLOCK));
  struct stat facts {};
  if (!handle.open() || ::fstat(handle.number(), &facts) != 0) refuse(errno == ENOENT ? "no such file" : reason());
  if (S_ISDIR(facts.st_mode)) refuse("it is a folder");
  if (!S_ISREG(facts.st_mode)) refuse("it is not a regular file");
  if (static_cast<std::size_t>(facts.st_size) > most) {
    refuse(fmt::format("it has {} bytes, {} are allowed", facts.st_size, most));
  }
  std::string content(static_cast<std::size_t>(facts.st_size), '\0');
  std::size_t done = 0;
  while (done < content.size()) {
    const ssize_t got = ::read(handle.number(), content.data() + done, content.size() - done);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) refuse(reason());
    if (got == 0) break;
    done += static_cast<std::size_t>(got);
  }
  content.resize(done);
  return content;
}

}  // namespace stillground
