#pragma once

#include "engine/run/error_kernels.hpp"

namespace stillground::run {

/// What the kernels do not explain of the errors on days on which the pump stops and starts: largest absolute value
/// over the hours with flow [K].
struct Unexplained {
  double step = 0;
  double layers = 0;
};

/// Marches one bore through the hardest restart of each quarter of the run-year. Nothing where the pump never stops.
Unexplained unexplained_by_restarts(const Assembly& assembly, const ErrorKernels& kernels);

}  // namespace stillground::run
