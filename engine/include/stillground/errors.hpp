#pragma once

#include <stillground/export.hpp>

#include <stdexcept>
#include <string>
#include <utility>

namespace stillground {

/// Where something stands in an input file: 1-based line and column, 0 where there is none.
struct Place {
  std::string file;
  int line = 0;
  int column = 0;

  /// "site.yaml:14:19", with the parts that are known; empty without a file.
  std::string text() const {
    std::string s = file;
    for (const int number : {line, column}) {
      if (s.empty() || number <= 0) break;
      s += ':';
      s += std::to_string(number);
    }
    return s;
  }
};

/// Root of every error that a user may meet; what() is one line that says where, which key, what was found and what is
/// allowed. `exit_status`: with which our own programs end for it.
class STILLGROUND_EXPORT Error : public std::runtime_error {
 public:
  Error(int exit_status, const std::string& what) : std::runtime_error(what), exit_status_(exit_status) {}
  int exit_status() const { return exit_status_; }

 private:
  int exit_status_;
};

/// The input or the command line is wrong: exit status 2.
class STILLGROUND_EXPORT InputError : public Error {
 public:
  explicit InputError(const std::string& text) : Error(2, text) {}

  /// `key` is the dotted path of the scenario's key ("bore.depth"), empty where there is none.
  InputError(Place place, std::string key, const std::string& text)
      : Error(2, join(place.text(), key, text)), place_(std::move(place)), key_(std::move(key)) {}

  const Place& place() const { return place_; }
  const std::string& key() const { return key_; }

 private:
  static std::string join(const std::string& place, const std::string& key, const std::string& text) {
    std::string s;
    if (!place.empty()) s += place + ": ";
    if (!key.empty()) s += key + ": ";
    return s + text;
  }

  Place place_;
  std::string key_;
};

/// The march failed: a number that is not finite, an equation without a root. Exit status 3.
class STILLGROUND_EXPORT NumericsError : public Error {
 public:
  explicit NumericsError(const std::string& text) : Error(3, text) {}
};

/// The machine failed: disk, memory, a file that cannot be written. Exit status 3.
class STILLGROUND_EXPORT SystemError : public Error {
 public:
  explicit SystemError(const std::string& text) : Error(3, text) {}
};

/// The user stopped the run: exit status 130.
class STILLGROUND_EXPORT Interrupted : public Error {
 public:
  explicit Interrupted(const std::string& text) : Error(130, text) {}
};

/// Something the user should know that does not stop the work: printed by `check` and `run`, stored in the result.
struct Warning {
  Place place;
  std::string text;
  std::string range;  ///< where the model holds, empty if that is said in the text

  /// One line: place, text and range.
  std::string line() const {
    std::string s = place.text();
    if (!s.empty()) s += ": ";
    s += text;
    if (!range.empty()) s += " (" + range + ")";
    return s;
  }
};

}  // namespace stillground
