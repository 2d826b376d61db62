#pragma once

#include <string>

namespace stillground::app {

/// What the bar on a terminal says.
struct ProgressTexts {
  double part = 0;    ///< of the run that is done, 0 to 1
  std::string date;   ///< simulated
  std::string speed;  ///< empty while nothing can be said of it
  std::string left;   ///< wall time, likewise
};

/// One line of fewer than `columns` characters, so that it never wraps: the widest of these that fits, a bar with all
/// of it, without the speed, without the time left; then the same without a bar; in the end the percentage, cut.
std::string progress_line(const ProgressTexts& texts, int columns);

}  // namespace stillground::app
