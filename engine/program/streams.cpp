#include "engine/program/streams.hpp"

#include <fcntl.h>
#include <poll.h>
#include <unistd.h>

#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstring>
#include <iostream>

namespace stillground::program {

namespace {

/// A pipe whose other end is closed reports an error condition at once.
bool reader_gone() {
  pollfd watched{STDOUT_FILENO, POLLOUT, 0};
  return ::poll(&watched, 1, 0) == 1 && (watched.revents & POLLERR) != 0;
}

}  // namespace

void prepare_streams() {
  std::signal(SIGPIPE, SIG_IGN);
  for (int number = STDIN_FILENO; number <= STDERR_FILENO; ++number) {
    if (::fcntl(number, F_GETFD) != -1) continue;
    // Opened the wrong way round on purpose: to use a closed stream is an error that is reported, not a silent success.
    const int opened = ::open("/dev/null", number == STDIN_FILENO ? O_WRONLY : O_RDONLY);
    if (opened != number && opened >= 0) ::close(opened);
  }
}

Output finish_output(const char*& reason) {
  errno = 0;
  std::cout.flush();
  const bool flushed = std::fflush(stdout) == 0 && !std::ferror(stdout) && std::cout.good();
  const int error = errno;
  if (flushed) return Output::delivered;
  if (error == EPIPE || reader_gone()) return Output::reader_gone;
  reason = error != 0 ? std::strerror(error) : "write error";
  return Output::failed;
}

}  // namespace stillground::program
