#pragma once

#include <stillground/date.hpp>
#include <stillground/errors.hpp>
#include <stillground/export.hpp>

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace stillground {

/// A scenario as read from its file. It does not change; copies share one reading, and threads may share a copy.
class STILLGROUND_EXPORT Scenario {
 public:
  const std::string& title() const;
  Date start() const;                            ///< of the run, at midnight
  int years() const;                             ///< of the run
  bool screens() const;                          ///< asks for an estimate without a march (`method: screening`)
  const std::vector<Warning>& warnings() const;  ///< found while reading; `check` and `run` repeat them

  struct Content;  ///< the engine's own
  explicit Scenario(std::shared_ptr<const Content> content);
  const Content& content() const;

 private:
  std::shared_ptr<const Content> content_;
};

/// Reads a scenario file and every file it names (catalogue entries, loads, positions, profiles), relative to its
/// folder, and judges what can be judged without physics.
///
/// The catalogues of pipes, grouts and ground (`use: hdpe-dr11-1.25in`) are looked for in the folder that the
/// environment variable STILLGROUND_CONFIGS names; else in `catalogues`, of which CMake's package tells an
/// installation's own (stillground_CATALOGUES); if that is empty, in share/stillground/configs beside or above the
/// shared library, or the program that the static library was linked into.
///
/// Throws InputError (file:line:col: key: what was found, what is allowed), SystemError. Not from two threads at once.
STILLGROUND_EXPORT Scenario read_scenario(const std::filesystem::path& file,
                                          const std::filesystem::path& catalogues = {});

}  // namespace stillground
