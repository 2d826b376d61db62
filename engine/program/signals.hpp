#pragma once

#include <atomic>

namespace stillground::program {

/// From now on SIGINT, SIGTERM and SIGHUP (unless that is ignored, as under nohup) set the returned flag, so that the
/// work can save what it has and throw Interrupted. A second SIGINT ends the program at once. Call it only in a main
/// that looks at the flag; programs without long work keep the system's own behaviour.
const std::atomic<bool>& stop_on_signals();

}  // namespace stillground::program
