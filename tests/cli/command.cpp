#include "tests/cli/command.hpp"

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <csignal>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <thread>

namespace stillground::testing {

namespace {

namespace fs = std::filesystem;

fs::path program_path(const std::string& word) {
  return word.starts_with('/') ? fs::path(word) : fs::path(PROGRAM_FOLDER) / word;
}

/// In the child, between fork and exec: only calls that are safe there.
void redirect(int stream, const char* target) {
  const int opened = ::open(target, O_WRONLY | O_CREAT, 0644);
  if (opened < 0) ::_exit(126);
  ::dup2(opened, stream);
  ::close(opened);
}

/// Standard output becomes a pipe that nobody reads.
void redirect_to_nobody() {
  int ends[2];
  if (::pipe(ends) != 0) ::_exit(126);
  ::dup2(ends[1], STDOUT_FILENO);
  ::close(ends[0]);
  ::close(ends[1]);
}

}  // namespace

Process::Process(const std::vector<std::string>& words, const fs::path& folder, const std::string& out) {
  static std::atomic<int> count{0};
  const std::string stem = ".output_" + std::to_string(++count);
  out_ = folder / (stem + ".out");
  err_ = folder / (stem + ".err");
  const std::string program = program_path(words.at(0)).string();
  const std::string out_target = out.empty() ? out_.string() : out;
  std::vector<char*> arguments;
  for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
  arguments.push_back(nullptr);
  id_ = ::fork();
  if (id_ < 0) throw std::runtime_error("cannot fork");
  if (id_ > 0) return;
  if (::chdir(folder.c_str()) != 0) ::_exit(126);
  if (out_target == "closed") {
    ::close(STDOUT_FILENO);
  } else if (out_target == "nobody") {
    redirect_to_nobody();
  } else {
    redirect(STDOUT_FILENO, out_target.c_str());
  }
  redirect(STDERR_FILENO, err_.c_str());
  ::execv(program.c_str(), arguments.data());
  ::_exit(127);
}

Process::~Process() {
  if (id_ <= 0) return;
  ::kill(id_, SIGKILL);
  ::waitpid(id_, nullptr, 0);
}

void Process::send(int signal) const {
  ::kill(id_, signal);
}

bool Process::has_said(const std::string& text) const {
  const auto patience = std::chrono::steady_clock::now() + std::chrono::minutes(2);
  while (std::chrono::steady_clock::now() < patience) {
    if ((bytes(out_) + bytes(err_)).find(text) != std::string::npos) return true;
    siginfo_t ended{};
    if (::waitid(P_PID, static_cast<id_t>(id_), &ended, WEXITED | WNOHANG | WNOWAIT) == 0 && ended.si_pid == id_)
      return false;
    std::this_thread::sleep_for(std::chrono::milliseconds(2));
  }
  return false;
}

Outcome Process::wait() {
  int status = 0;
  ::waitpid(id_, &status, 0);
  id_ = -1;
  Outcome outcome;
  outcome.status = WIFSIGNALED(status) ? 128 + WTERMSIG(status) : WEXITSTATUS(status);
  outcome.out = bytes(out_);
  outcome.err = bytes(err_);
  fs::remove(out_);
  fs::remove(err_);
  return outcome;
}

Outcome run(const std::vector<std::string>& words, const fs::path& folder, const std::string& out) {
  return Process(words, folder, out).wait();
}

std::vector<std::string> built_verbs() {
  const std::string prefix = "stillground-";
  std::vector<std::string> verbs;
  for (const auto& entry : fs::directory_iterator(PROGRAM_FOLDER)) {
    const std::string name = entry.path().filename().string();
    if (name.starts_with(prefix)) verbs.push_back(name.substr(prefix.size()));
  }
  std::sort(verbs.begin(), verbs.end());
  return verbs;
}

std::string bytes(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace stillground::testing
