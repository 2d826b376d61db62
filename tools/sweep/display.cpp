#include "tools/sweep/display.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <cmath>
#include <cstdio>

#include "engine/program/duration.hpp"
#include "engine/program/progress_line.hpp"

namespace stillground::sweep {

namespace {

constexpr auto redraw_after = std::chrono::milliseconds(100);

}  // namespace

Display::Display() : terminal_(::isatty(STDERR_FILENO) != 0) {}

Display::~Display() {
  clear();
}

void Display::clear() {
  const std::lock_guard lock(guard_);
  if (drawn_) std::fputs("\r\033[K", stderr);
  drawn_ = false;
}

void Display::begin(const std::string& done_in_words, std::size_t of) {
  const std::lock_guard lock(guard_);
  words_ = done_in_words;
  of_ = static_cast<double>(of);
  done_ = 0;
  tenths_ = 0;
  began_ = Clock::now();
  draw();
}

void Display::add(double part) {
  const std::lock_guard lock(guard_);
  done_ += part;
  const int tenths = static_cast<int>(10 * done_ / of_ + 1e-9);
  if (terminal_ ? Clock::now() - last_drawn_ > redraw_after : tenths > tenths_) draw();
  tenths_ = tenths;
}

void Display::draw() {
  last_drawn_ = Clock::now();
  const double seconds = std::chrono::duration<double>(last_drawn_ - began_).count();
  program::ProgressTexts texts;
  texts.part = done_ / of_;
  texts.done =
      fmt::format("{} of {} points {}", static_cast<long>(std::floor(done_ + 1e-6)), static_cast<long>(of_), words_);
  if (seconds > 0.5 && done_ > 0) texts.left = program::duration_text((of_ - done_) / done_ * seconds) + " left";
  if (terminal_) {
    fmt::print(stderr, "\r\033[K{}", program::progress_line(texts, program::terminal_columns()));
  } else {
    fmt::print(stderr, "{}{}{}\n", texts.done, texts.left.empty() ? "" : ", ", texts.left);
  }
  std::fflush(stderr);
  drawn_ = terminal_;
}

}  // namespace stillground::sweep
