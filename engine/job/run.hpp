#pragma once

#include <stillground/progress.hpp>

#include <atomic>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include "engine/base/errors.hpp"
#include "engine/model/scenario.hpp"

namespace stillground::job {

using stillground::Progress;

struct Options {
  std::filesystem::path result;
  int threads = 0;              ///< 0: as many as the machine has; the bits do not depend on it
  bool resume = false;          ///< go on from the checkpoint that an interrupted run left
  bool fresh = false;           ///< throw such a checkpoint away
  std::string instruction_set;  ///< the kernels', by name; see job/chosen_kernels.hpp
  std::function<void(const std::vector<Warning>&)> warned;  ///< told before the first step; may be empty
  std::function<void(const Progress&)> progress;            ///< may be empty

  /// Called once there is something to lose; the flag is set from then on when the user wants the run to stop: save a
  /// checkpoint, throw Interrupted. Until then, however long preparing takes, a signal may end the program at once. May
  /// be empty.
  std::function<const std::atomic<bool>&()> listen;
};

/// Throws InputError at `key` if the end of a long run would come to nothing at `result`: a folder, in no folder, the
/// scenario's own file.
void refuse_place(const std::filesystem::path& result, const std::filesystem::path& scenario, const std::string& key);

/// Runs the scenario by the method that it asks for, march or screening, and writes the result file. Returns all
/// warnings. Throws InputError (before anything is written), NumericsError, SystemError, Interrupted.
std::vector<Warning> run(const model::Scenario& scenario, const Options& options);

}  // namespace stillground::job
