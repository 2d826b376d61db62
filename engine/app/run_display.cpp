#include "engine/app/run_display.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <cstdio>
#include <string>

#include "engine/base/temperature.hpp"
#include "engine/program/duration.hpp"
#include "engine/program/progress_line.hpp"
#include "engine/units/display.hpp"

namespace stillground::app {

namespace {

constexpr auto redraw_after = std::chrono::milliseconds(100);

std::string year_line(const job::Progress& p, UnitSystem system) {
  const units::Shown shown = units::shown_in("degC", system);
  return fmt::format("{}  year {:>3} of {}  EFT {:6.2f} to {:6.2f} {}\n",
                     iso(plus_days(p.start, static_cast<long>(p.hours_done) / 24)), p.year,
                     static_cast<int>(p.hours_total) / hours_per_year, shown(p.eft_least - zero_celsius),
                     shown(p.eft_most - zero_celsius), shown.units);
}

}  // namespace

RunDisplay::RunDisplay(UnitSystem units)
    : units_(units),
      bar_(::isatty(STDERR_FILENO) != 0),
      lines_(!bar_ || ::isatty(STDOUT_FILENO) == 0),
      began_(Clock::now()) {}

RunDisplay::~RunDisplay() {
  clear();
}

void RunDisplay::clear() {
  if (drawn_) std::fputs("\r\033[K", stderr);
  drawn_ = false;
}

void RunDisplay::show(const job::Progress& progress) {
  if (!started_) {
    started_ = true;
    began_ = Clock::now();
    hours_at_start_ = progress.hours_done;
  }
  if (lines_ && progress.year_finished) {
    // A reader that has gone away must not stop a long run: the loss is told at the end, by the exit status.
    std::fputs(year_line(progress, units_).c_str(), stdout);
    std::fflush(stdout);
  }
  if (bar_ && (!drawn_ || Clock::now() - last_drawn_ > redraw_after)) draw_bar(progress);
}

void RunDisplay::draw_bar(const job::Progress& p) {
  last_drawn_ = Clock::now();
  const double seconds = std::chrono::duration<double>(last_drawn_ - began_).count();
  const double done_here = p.hours_done - hours_at_start_;
  program::ProgressTexts texts;
  texts.part = p.hours_done / p.hours_total;
  texts.done = iso(plus_days(p.start, static_cast<long>(p.hours_done) / 24));
  if (seconds > 0.5 && done_here > 0) {
    texts.speed = fmt::format("{:.1f} years/min", done_here / hours_per_year / seconds * 60);
    texts.left = program::duration_text((p.hours_total - p.hours_done) / done_here * seconds) + " left";
  }
  fmt::print(stderr, "\r\033[K{}", program::progress_line(texts, program::terminal_columns()));
  std::fflush(stderr);
  drawn_ = true;
}

}  // namespace stillground::app
