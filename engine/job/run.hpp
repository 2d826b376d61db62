#pragma once

#include <atomic>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include "engine/base/calendar.hpp"
#include "engine/base/errors.hpp"
#include "engine/model/scenario.hpp"

namespace stillground::job {

/// How far a simulation has come; given once a simulated day.
struct Progress {
  Date start;             ///< of the run
  double hours_done = 0;  ///< simulated
  double hours_total = 0;
  bool year_finished = false;  ///< the last hour closed a run-year; the figures below are of that year
  int year = 0;                ///< that run-year, from 1
  double eft_least = 0;        ///< [K]
  double eft_most = 0;         ///< [K]
};

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

/// Runs the scenario by the method that it asks for, march or screening, and writes the result file. Returns all
/// warnings. Throws InputError (before anything is written), NumericsError, SystemError, Interrupted.
std::vector<Warning> run(const model::Scenario& scenario, const Options& options);

}  // namespace stillground::job
