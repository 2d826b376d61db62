#pragma once

#include <chrono>

#include "engine/job/run.hpp"

namespace stillground::app {

/// Shows how a run goes on: a bar on stderr where that is a terminal; one line a run-year on standard output unless a
/// bar is shown beside it on the same terminal.
class RunDisplay {
 public:
  /// `units`: in which it shows temperatures.
  explicit RunDisplay(UnitSystem units);
  ~RunDisplay();
  RunDisplay(const RunDisplay&) = delete;
  RunDisplay& operator=(const RunDisplay&) = delete;

  void show(const job::Progress& progress);

  /// Takes the bar off the terminal, so that a message starts on a clean line.
  void clear();

 private:
  using Clock = std::chrono::steady_clock;

  void draw_bar(const job::Progress& progress);

  UnitSystem units_;
  bool bar_;
  bool lines_;
  bool drawn_ = false;
  bool started_ = false;
  Clock::time_point began_;
  Clock::time_point last_drawn_;
  double hours_at_start_ = 0;  ///< already done when this process began: a resumed run's speed counts from there
};

}  // namespace stillground::app
