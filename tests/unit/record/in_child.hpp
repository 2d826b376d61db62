#pragma once

#include <sys/wait.h>
#include <unistd.h>

#include <exception>
#include <stdexcept>
#include <string>

namespace stillground::testing {

/// What `body` returns, computed in a child process: a crash becomes an answer ("ended by signal 11"), and what the
/// HDF5 library leaks over damaged files and full disks is not charged to the tests.
template <class Body>
std::string in_child(Body&& body) {
  int ends[2];
  if (::pipe(ends) != 0) throw std::runtime_error("no pipe");
  const pid_t child = ::fork();
  if (child < 0) throw std::runtime_error("no child process");
  if (child == 0) {
    std::string answer;
    try {
      answer = body();
    } catch (const std::exception& error) {
      answer = std::string("unexpected: ") + error.what();
    }
    const bool told = ::write(ends[1], answer.data(), answer.size()) == static_cast<ssize_t>(answer.size());
    ::_exit(told ? 0 : 1);
  }
  ::close(ends[1]);
  std::string answer;
  char buffer[4096];
  for (ssize_t n = 0; (n = ::read(ends[0], buffer, sizeof buffer)) > 0;)
    answer.append(buffer, static_cast<std::size_t>(n));
  ::close(ends[0]);
  int status = 0;
  ::waitpid(child, &status, 0);
  if (WIFSIGNALED(status)) return "ended by signal " + std::to_string(WTERMSIG(status));
  return answer;
}

}  // namespace stillground::testing
