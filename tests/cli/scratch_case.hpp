#pragma once

#include <filesystem>
#include <string>

#include "tests/unit/base/scratch.hpp"

namespace stillground::testing {

/// A folder with tests/cli/scenarios/pair.yaml, which takes a few seconds to run, and the loads it names: a day that
/// takes 4 kW of heat in winter from 6 to 18 o'clock and gives off 3 kW in summer from 10 to 16 (invented).
struct PairCase : Scratch {
  PairCase();

  /// Writes pair.yaml as NAME with `from` (which must stand there) replaced by `to`.
  void write_variant(const std::string& name, const std::string& from, const std::string& to) const;
};

}  // namespace stillground::testing
