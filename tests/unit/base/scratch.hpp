#pragma once

#include <stdlib.h>

#include <filesystem>
#include <stdexcept>
#include <string>

namespace stillground::testing {

/// A folder of its own for one test, removed with all that is in it.
struct Scratch {
  std::filesystem::path folder;

  Scratch() {
    std::string pattern = (std::filesystem::temp_directory_path() / "stillground-XXXXXX").string();
    if (!::mkdtemp(pattern.data())) throw std::runtime_error("no temporary folder");
    folder = pattern;
  }
  ~Scratch() {
    std::error_code ignored;
    std::filesystem::remove_all(folder, ignored);
  }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;
};

}  // namespace stillground::testing
