#pragma once

#include <stillground/progress.hpp>
#include <stillground/scenario.hpp>

#include <atomic>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

namespace stillground {

struct RunOptions {
  int threads = 0;              ///< 0: as many as the machine has; the result does not depend on it
  bool resume = false;          ///< go on from the checkpoint that an interrupted march left
  bool fresh = false;           ///< throw such a checkpoint away
  std::string instruction_set;  ///< "baseline", "avx2" or "avx512"; empty: the widest there is, or the checkpoint's
  std::function<void(const std::vector<Warning>&)> warned;  ///< told before the first step; may be empty
  std::function<void(const Progress&)> progress;            ///< on the caller's thread; what it throws ends the run

  /// Looked at after each simulated hour, of a screening after each run-year, and not while a run is prepared
  /// (seconds); once it is true, a march saves a checkpoint and `run` throws Interrupted. May be set from anywhere, a
  /// signal handler included. Must outlive the call.
  const std::atomic<bool>* cancel = nullptr;
};

/// Runs the scenario by its method, march or screening, and writes the file `result`, replacing one of that name only
/// when it is complete. Returns all warnings.
///
/// Throws InputError (before anything is written: the scenario, the place of the result, a checkpoint that was left and
/// is neither resumed nor thrown away), NumericsError (the march failed, with date, place and likely cause),
/// SystemError (disk, memory), Interrupted. After each of them no file stands under the name `result` that did not
/// before; after Interrupted a checkpoint stands beside it (result + ".spool").
///
/// Not from two threads at once: the library behind the result files is not made for it.
STILLGROUND_EXPORT std::vector<Warning> run(const Scenario& scenario, const std::filesystem::path& result,
                                            const RunOptions& options = {});

}  // namespace stillground
