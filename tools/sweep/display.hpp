#pragma once

#include <chrono>
#include <cstddef>
#include <mutex>
#include <string>

namespace stillground::sweep {

/// The one line that tells how a night goes on: on standard error, drawn over itself on a terminal, elsewhere written
/// anew after each tenth of a stage. Any thread may call.
class Display {
 public:
  Display();
  ~Display();
  Display(const Display&) = delete;
  Display& operator=(const Display&) = delete;

  /// A stage begins: "screened", of so many points.
  void begin(const std::string& done_in_words, std::size_t of);

  /// So much of a point more is done: 1 for one, less for a part of it.
  void add(double part);

  /// Takes the line off a terminal.
  void clear();

 private:
  using Clock = std::chrono::steady_clock;

  void draw();

  std::mutex guard_;
  bool terminal_;
  bool drawn_ = false;
  std::string words_;
  double of_ = 0, done_ = 0;
  int tenths_ = 0;
  Clock::time_point began_, last_drawn_;
};

}  // namespace stillground::sweep
