#pragma once

#include <sys/types.h>

#include <filesystem>
#include <string>
#include <vector>

/// The built programs as a person or a script uses them.
namespace stillground::testing {

/// How a program ended.
struct Outcome {
  int status = -1;  ///< exit status; 128 + the signal's number if one killed it
  std::string out;  ///< what it wrote to standard output
  std::string err;  ///< what it wrote to standard error
};

/// A program at work, its output caught in files of a scratch folder. Killed if the test ends before it does.
class Process {
 public:
  /// `words`: the program ("stillground", looked up among the built ones, or any other by its path) and its arguments.
  /// `out`: where standard output goes instead of a file: a path such as /dev/full, "closed", or "nobody" (a pipe
  /// without a reader).
  Process(const std::vector<std::string>& words, const std::filesystem::path& folder, const std::string& out = "");
  ~Process();
  Process(const Process&) = delete;
  Process& operator=(const Process&) = delete;

  void send(int signal) const;

  /// Waits until the output so far holds `text`; false if the program ended or two minutes passed without it.
  bool has_said(const std::string& text) const;

  Outcome wait();

 private:
  pid_t id_ = -1;
  std::filesystem::path out_;
  std::filesystem::path err_;
};

/// Runs a program to its end.
Outcome run(const std::vector<std::string>& words, const std::filesystem::path& folder, const std::string& out = "");

/// The verbs that were built, without the front program's name.
std::vector<std::string> built_verbs();

/// A file's bytes.
std::string bytes(const std::filesystem::path& file);

}  // namespace stillground::testing
