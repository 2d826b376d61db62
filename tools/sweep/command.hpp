#pragma once

#include <filesystem>
#include <optional>

#include "engine/base/unit_system.hpp"

namespace stillground::sweep {

/// What `stillground sweep` is asked to do.
struct Command {
  std::filesystem::path plan;
  std::filesystem::path folder;
  std::optional<std::size_t> point;
  bool list = false;
  bool gather = false;
  bool json = false;
  int threads = 0;
  std::optional<UnitSystem> units;
};

/// Does it, and tells of it on standard output. Throws InputError, SystemError, Interrupted.
void execute(const Command& command);

}  // namespace stillground::sweep
