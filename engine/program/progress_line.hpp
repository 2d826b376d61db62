#pragma once

#include <string>

namespace stillground::program {

/// What the bar on a terminal says.
struct ProgressTexts {
  double part = 0;    ///< of the work that is done, 0 to 1
  std::string done;   ///< how far in words: the simulated date
  std::string speed;  ///< empty while nothing can be said of it
  std::string left;   ///< wall time, likewise
};

/// One line of fewer than `columns` characters, so that it never wraps: the widest of these that fits, a bar with all
/// of it, without the speed, without the time left; then the same without a bar; in the end the percentage, cut.
std::string progress_line(const ProgressTexts& texts, int columns);

/// Width of the terminal that standard error is, now: it may be resized at any time. A common one where it does not
/// say.
int terminal_columns();

}  // namespace stillground::program
